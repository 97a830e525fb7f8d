-- AlterTable
ALTER TABLE "OperationPlanning" ADD COLUMN     "spoiltPercent" DOUBLE PRECISION;
