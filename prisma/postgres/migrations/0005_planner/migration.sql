-- AlterTable
ALTER TABLE "Batch" ADD COLUMN     "releaseOn" TEXT,
ADD COLUMN     "weight" DOUBLE PRECISION NOT NULL DEFAULT 1;

-- CreateTable
CREATE TABLE "PlanPin" (
    "id" TEXT NOT NULL,
    "batchId" TEXT NOT NULL,
    "taskKey" TEXT NOT NULL,
    "startAt" TIMESTAMP(3) NOT NULL,
    "personId" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "PlanPin_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OperationPlanning" (
    "operationId" TEXT NOT NULL,
    "setUpMinutes" DOUBLE PRECISION NOT NULL,
    "personId" TEXT,
    "skill" TEXT,
    "leastPieceMinutes" DOUBLE PRECISION,
    "mostPieces" INTEGER,
    "resourceId" TEXT,
    "resourceShare" TEXT NOT NULL,
    "holdsUntil" TEXT NOT NULL,
    "remedyMinutes" DOUBLE PRECISION,

    CONSTRAINT "OperationPlanning_pkey" PRIMARY KEY ("operationId")
);

-- CreateTable
CREATE TABLE "CalendarEntry" (
    "uid" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,
    "isCancelled" BOOLEAN NOT NULL,
    "body" JSONB NOT NULL,

    CONSTRAINT "CalendarEntry_pkey" PRIMARY KEY ("uid")
);

-- CreateTable
CREATE TABLE "Resource" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "capacity" INTEGER NOT NULL,
    "openFromMinute" INTEGER,
    "openToMinute" INTEGER,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Resource_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ResourceChange" (
    "id" TEXT NOT NULL,
    "resourceId" TEXT NOT NULL,
    "fromOn" TEXT NOT NULL,
    "toOn" TEXT NOT NULL,
    "capacity" INTEGER NOT NULL,
    "reason" TEXT NOT NULL,

    CONSTRAINT "ResourceChange_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "PlanPin_batchId_taskKey_key" ON "PlanPin"("batchId", "taskKey");

-- CreateIndex
CREATE UNIQUE INDEX "Resource_name_key" ON "Resource"("name");

-- CreateIndex
CREATE INDEX "ResourceChange_resourceId_idx" ON "ResourceChange"("resourceId");

-- AddForeignKey
ALTER TABLE "PlanPin" ADD CONSTRAINT "PlanPin_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlanPin" ADD CONSTRAINT "PlanPin_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OperationPlanning" ADD CONSTRAINT "OperationPlanning_operationId_fkey" FOREIGN KEY ("operationId") REFERENCES "RouteOperation"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OperationPlanning" ADD CONSTRAINT "OperationPlanning_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OperationPlanning" ADD CONSTRAINT "OperationPlanning_resourceId_fkey" FOREIGN KEY ("resourceId") REFERENCES "Resource"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ResourceChange" ADD CONSTRAINT "ResourceChange_resourceId_fkey" FOREIGN KEY ("resourceId") REFERENCES "Resource"("id") ON DELETE CASCADE ON UPDATE CASCADE;
