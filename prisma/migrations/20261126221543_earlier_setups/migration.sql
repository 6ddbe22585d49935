-- AlterTable
ALTER TABLE "SavedSetup" ADD COLUMN "earlier" JSONB;
