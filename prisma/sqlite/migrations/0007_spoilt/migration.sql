-- AlterTable
ALTER TABLE "OperationPlanning" ADD COLUMN "spoiltPercent" REAL;
