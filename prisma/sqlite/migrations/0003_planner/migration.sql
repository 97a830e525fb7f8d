-- CreateTable
CREATE TABLE "CalendarEntry" (
    "uid" TEXT NOT NULL PRIMARY KEY,
    "sequence" INTEGER NOT NULL,
    "changedAt" DATETIME NOT NULL,
    "isCancelled" BOOLEAN NOT NULL,
    "body" JSONB NOT NULL
);
