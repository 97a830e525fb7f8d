-- CreateTable
CREATE TABLE "Preparation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "batchId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "madeAt" DATETIME NOT NULL,
    CONSTRAINT "Preparation_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PreparationTick" (
    "preparationId" TEXT NOT NULL,
    "item" TEXT NOT NULL,
    "personId" TEXT,
    "at" DATETIME NOT NULL,

    PRIMARY KEY ("preparationId", "item"),
    CONSTRAINT "PreparationTick_preparationId_fkey" FOREIGN KEY ("preparationId") REFERENCES "Preparation" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PreparationTick_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Preparation_batchId_number_key" ON "Preparation"("batchId", "number");
