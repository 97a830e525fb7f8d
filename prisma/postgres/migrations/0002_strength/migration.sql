-- AlterTable
ALTER TABLE "Batch" ADD COLUMN     "findings" JSONB,
ADD COLUMN     "rulesVersion" INTEGER;

-- AlterTable
ALTER TABLE "Material" ADD COLUMN     "bondFigures" JSONB;

-- AlterTable
-- The figure stays, under the name it has wherever a line is described
ALTER TABLE "Revision" RENAME COLUMN "lineClassN" TO "lineLabelN";
ALTER TABLE "Revision" ADD COLUMN     "ballast" JSONB,
ADD COLUMN     "dragShare" DOUBLE PRECISION,
ADD COLUMN     "fishMassG" DOUBLE PRECISION,
ADD COLUMN     "knotShare" DOUBLE PRECISION,
ADD COLUMN     "lineType" TEXT,
ADD COLUMN     "moisturePercent" DOUBLE PRECISION,
ADD COLUMN     "weighedDensityKgM3" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "Anchor" ADD COLUMN     "eyeInsideMm" DOUBLE PRECISION,
ADD COLUMN     "face" TEXT,
ADD COLUMN     "isEyeClosed" BOOLEAN,
ADD COLUMN     "leansTo" TEXT,
ADD COLUMN     "loadAngleDeg" DOUBLE PRECISION,
ADD COLUMN     "twistPitchMm" DOUBLE PRECISION,
ADD COLUMN     "zMm" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "Waiver" ADD COLUMN     "withdrawnAt" TIMESTAMP(3);

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN     "strengthSettings" JSONB;
