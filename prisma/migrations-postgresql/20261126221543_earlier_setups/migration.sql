-- AlterTable
ALTER TABLE "SavedSetup" ADD COLUMN     "earlier" JSON;
