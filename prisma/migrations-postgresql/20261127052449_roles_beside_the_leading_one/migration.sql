-- AlterTable
ALTER TABLE "Person" ADD COLUMN     "also" TEXT COLLATE "C";
