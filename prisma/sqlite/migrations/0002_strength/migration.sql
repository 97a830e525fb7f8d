-- AlterTable
ALTER TABLE "Batch" ADD COLUMN "findings" JSONB;
ALTER TABLE "Batch" ADD COLUMN "rulesVersion" INTEGER;

-- AlterTable
ALTER TABLE "Material" ADD COLUMN "bondFigures" JSONB;

-- AlterTable
ALTER TABLE "Anchor" ADD COLUMN "eyeInsideMm" REAL;
ALTER TABLE "Anchor" ADD COLUMN "face" TEXT;
ALTER TABLE "Anchor" ADD COLUMN "isEyeClosed" BOOLEAN;
ALTER TABLE "Anchor" ADD COLUMN "leansTo" TEXT;
ALTER TABLE "Anchor" ADD COLUMN "loadAngleDeg" REAL;
ALTER TABLE "Anchor" ADD COLUMN "twistPitchMm" REAL;
ALTER TABLE "Anchor" ADD COLUMN "zMm" REAL;

-- AlterTable
ALTER TABLE "Waiver" ADD COLUMN "withdrawnAt" DATETIME;

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN "strengthSettings" JSONB;

-- AlterTable: the figure stays, under the name it has wherever a line is described
ALTER TABLE "Revision" RENAME COLUMN "lineClassN" TO "lineLabelN";
ALTER TABLE "Revision" ADD COLUMN "ballast" JSONB;
ALTER TABLE "Revision" ADD COLUMN "dragShare" REAL;
ALTER TABLE "Revision" ADD COLUMN "fishMassG" REAL;
ALTER TABLE "Revision" ADD COLUMN "knotShare" REAL;
ALTER TABLE "Revision" ADD COLUMN "lineType" TEXT;
ALTER TABLE "Revision" ADD COLUMN "moisturePercent" REAL;
ALTER TABLE "Revision" ADD COLUMN "weighedDensityKgM3" REAL;
