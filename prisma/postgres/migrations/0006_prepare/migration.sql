-- CreateTable
CREATE TABLE "Preparation" (
    "id" TEXT NOT NULL,
    "batchId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Preparation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PreparationTick" (
    "preparationId" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "personId" TEXT,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "PreparationTick_pkey" PRIMARY KEY ("preparationId","item")
);

-- CreateIndex
CREATE UNIQUE INDEX "Preparation_batchId_number_key" ON "Preparation"("batchId", "number");

-- AddForeignKey
ALTER TABLE "Preparation" ADD CONSTRAINT "Preparation_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PreparationTick" ADD CONSTRAINT "PreparationTick_preparationId_fkey" FOREIGN KEY ("preparationId") REFERENCES "Preparation"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PreparationTick" ADD CONSTRAINT "PreparationTick_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;
