-- CreateTable
CREATE TABLE "CalendarEntry" (
    "uid" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,
    "isCancelled" BOOLEAN NOT NULL,
    "body" JSONB NOT NULL,

    CONSTRAINT "CalendarEntry_pkey" PRIMARY KEY ("uid")
);
