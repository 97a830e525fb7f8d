-- DropForeignKey
ALTER TABLE "Pull" DROP CONSTRAINT "Pull_mixId_fkey";

-- DropForeignKey
ALTER TABLE "Pull" DROP CONSTRAINT "Pull_pieceId_fkey";

-- DropIndex
DROP INDEX "Pull_seriesId_orderNumber_key";

-- AlterTable
ALTER TABLE "PullSeries" DROP COLUMN "design",
ADD COLUMN     "batchId" TEXT,
ADD COLUMN     "closedAt" TIMESTAMP(3),
ADD COLUMN     "kind" TEXT NOT NULL,
ADD COLUMN     "note" TEXT NOT NULL,
ADD COLUMN     "plan" JSONB NOT NULL,
ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1;

-- AlterTable
ALTER TABLE "Pull" DROP COLUMN "failureMode",
DROP COLUMN "level",
DROP COLUMN "mixId",
DROP COLUMN "orderNumber",
DROP COLUMN "pieceId",
ADD COLUMN     "angleDeg" DOUBLE PRECISION NOT NULL,
ADD COLUMN     "cureHours" DOUBLE PRECISION,
ADD COLUMN     "excludedAt" TIMESTAMP(3),
ADD COLUMN     "excludedNote" TEXT NOT NULL,
ADD COLUMN     "excludedPersonId" TEXT,
ADD COLUMN     "key" TEXT NOT NULL,
ADD COLUMN     "leftDamage" BOOLEAN NOT NULL,
ADD COLUMN     "mode" TEXT NOT NULL,
ADD COLUMN     "number" INTEGER NOT NULL,
ADD COLUMN     "photoName" TEXT,
ADD COLUMN     "photoType" TEXT,
ADD COLUMN     "recordedAt" TIMESTAMP(3) NOT NULL,
ADD COLUMN     "releasedAt" TIMESTAMP(3),
ADD COLUMN     "scaleCheckedOn" TEXT,
ADD COLUMN     "scaleGreatestN" DOUBLE PRECISION,
ADD COLUMN     "scaleId" TEXT,
ADD COLUMN     "scaleName" TEXT,
ADD COLUMN     "specimenId" TEXT NOT NULL,
ALTER COLUMN "isLowerBound" DROP DEFAULT,
ALTER COLUMN "pulledAt" SET NOT NULL;

-- CreateTable
CREATE TABLE "Scale" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "greatestN" DOUBLE PRECISION NOT NULL,
    "checkedOn" TEXT,
    "note" TEXT NOT NULL,
    "isArchived" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Scale_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PullMix" (
    "id" TEXT NOT NULL,
    "seriesId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "adhesiveMaterialId" TEXT,
    "adhesiveLotCode" TEXT NOT NULL,
    "sheet" JSONB,
    "mixedAt" TIMESTAMP(3),
    "setAt" TIMESTAMP(3),
    "note" TEXT NOT NULL,
    "batchMixId" TEXT,

    CONSTRAINT "PullMix_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PullSpecimen" (
    "id" TEXT NOT NULL,
    "seriesId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "mixId" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "depthMm" DOUBLE PRECISION NOT NULL,
    "pullOrder" INTEGER NOT NULL,
    "pieceId" TEXT,
    "anchorId" TEXT,
    "setAt" TIMESTAMP(3),

    CONSTRAINT "PullSpecimen_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PullChange" (
    "id" TEXT NOT NULL,
    "seriesId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "pullId" TEXT,
    "at" TIMESTAMP(3) NOT NULL,
    "personId" TEXT,
    "kind" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,

    CONSTRAINT "PullChange_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Calibration" (
    "id" TEXT NOT NULL,
    "woodMaterialId" TEXT NOT NULL,
    "adhesiveMaterialId" TEXT NOT NULL,
    "wireMaterialId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "status" TEXT NOT NULL,
    "acceptedAt" TIMESTAMP(3) NOT NULL,
    "personId" TEXT,
    "body" JSONB NOT NULL,
    "note" TEXT NOT NULL,
    "endedAt" TIMESTAMP(3),
    "endedReason" TEXT,

    CONSTRAINT "Calibration_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Scale_name_key" ON "Scale"("name");

-- CreateIndex
CREATE UNIQUE INDEX "PullMix_seriesId_name_key" ON "PullMix"("seriesId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "PullSpecimen_seriesId_code_key" ON "PullSpecimen"("seriesId", "code");

-- CreateIndex
CREATE UNIQUE INDEX "PullSpecimen_seriesId_pullOrder_key" ON "PullSpecimen"("seriesId", "pullOrder");

-- CreateIndex
CREATE UNIQUE INDEX "PullChange_seriesId_number_key" ON "PullChange"("seriesId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Calibration_woodMaterialId_adhesiveMaterialId_wireMaterialI_key" ON "Calibration"("woodMaterialId", "adhesiveMaterialId", "wireMaterialId", "version");

-- CreateIndex
CREATE INDEX "PullSeries_status_idx" ON "PullSeries"("status");

-- CreateIndex
CREATE UNIQUE INDEX "Pull_key_key" ON "Pull"("key");

-- CreateIndex
CREATE INDEX "Pull_specimenId_idx" ON "Pull"("specimenId");

-- CreateIndex
CREATE UNIQUE INDEX "Pull_seriesId_number_key" ON "Pull"("seriesId", "number");

-- AddForeignKey
ALTER TABLE "PullSeries" ADD CONSTRAINT "PullSeries_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PullMix" ADD CONSTRAINT "PullMix_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "PullSeries"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PullMix" ADD CONSTRAINT "PullMix_batchMixId_fkey" FOREIGN KEY ("batchMixId") REFERENCES "Mix"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PullSpecimen" ADD CONSTRAINT "PullSpecimen_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "PullSeries"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PullSpecimen" ADD CONSTRAINT "PullSpecimen_mixId_fkey" FOREIGN KEY ("mixId") REFERENCES "PullMix"("id") ON DELETE NO ACTION ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PullSpecimen" ADD CONSTRAINT "PullSpecimen_pieceId_fkey" FOREIGN KEY ("pieceId") REFERENCES "Piece"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pull" ADD CONSTRAINT "Pull_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "PullSpecimen"("id") ON DELETE NO ACTION ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pull" ADD CONSTRAINT "Pull_scaleId_fkey" FOREIGN KEY ("scaleId") REFERENCES "Scale"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PullChange" ADD CONSTRAINT "PullChange_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "PullSeries"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PullChange" ADD CONSTRAINT "PullChange_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Calibration" ADD CONSTRAINT "Calibration_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;
