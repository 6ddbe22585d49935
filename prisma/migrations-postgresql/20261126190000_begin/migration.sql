-- Everything the SQLite migrations have made up to here. Texts sort by their bytes (COLLATE "C") as they do there.
-- CreateTable
CREATE TABLE "Bead" (
    "id" TEXT COLLATE "C" NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT COLLATE "C" NOT NULL,
    "welder" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "setup" JSON NOT NULL,
    "judgement" JSON NOT NULL,
    "previousId" TEXT COLLATE "C",
    "welderId" TEXT COLLATE "C",
    "jobId" TEXT COLLATE "C",
    "weldId" TEXT COLLATE "C",

    CONSTRAINT "Bead_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DeletedBead" (
    "id" TEXT COLLATE "C" NOT NULL,
    "beadId" TEXT COLLATE "C" NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT COLLATE "C" NOT NULL,
    "welder" TEXT COLLATE "C",
    "welderId" TEXT COLLATE "C",
    "deletedAt" TIMESTAMP(3) NOT NULL,
    "content" TEXT COLLATE "C",

    CONSTRAINT "DeletedBead_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Photo" (
    "id" TEXT COLLATE "C" NOT NULL,
    "beadId" TEXT COLLATE "C" NOT NULL,
    "sha256" TEXT COLLATE "C" NOT NULL,
    "role" TEXT COLLATE "C" NOT NULL,
    "place" INTEGER NOT NULL,
    "format" TEXT COLLATE "C" NOT NULL,
    "bytes" INTEGER NOT NULL,
    "widthPx" INTEGER NOT NULL,
    "heightPx" INTEGER NOT NULL,
    "addedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "drawing" JSON NOT NULL,

    CONSTRAINT "Photo_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "BeadFacts" (
    "number" INTEGER NOT NULL,
    "beadId" TEXT COLLATE "C" NOT NULL,
    "place" TEXT COLLATE "C" NOT NULL,
    "day" TEXT COLLATE "C" NOT NULL,
    "stamp" TEXT COLLATE "C" NOT NULL DEFAULT '',
    "weighedBy" TEXT COLLATE "C" NOT NULL DEFAULT '',
    "titleKey" TEXT COLLATE "C" NOT NULL,
    "welder" TEXT COLLATE "C",
    "welderKey" TEXT COLLATE "C" NOT NULL,
    "welderId" TEXT COLLATE "C",
    "jobId" TEXT COLLATE "C",
    "previousId" TEXT COLLATE "C",
    "process" TEXT COLLATE "C",
    "transfer" TEXT COLLATE "C",
    "electrodeClass" TEXT COLLATE "C",
    "polarity" TEXT COLLATE "C",
    "gas" TEXT COLLATE "C",
    "joint" TEXT COLLATE "C",
    "position" TEXT COLLATE "C",
    "progression" TEXT COLLATE "C",
    "baseMetal" TEXT COLLATE "C",
    "surface" TEXT COLLATE "C",
    "inputPower" TEXT COLLATE "C",
    "thicknessMm" DOUBLE PRECISION,
    "criteriaId" TEXT COLLATE "C",
    "verdict" TEXT COLLATE "C",
    "triedCause" TEXT COLLATE "C",
    "outcome" TEXT COLLATE "C",
    "confirmedCause" TEXT COLLATE "C",
    "firstCause" TEXT COLLATE "C",
    "photos" INTEGER NOT NULL DEFAULT 0,
    "marks" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "BeadFacts_pkey" PRIMARY KEY ("number")
);

-- CreateTable
CREATE TABLE "BeadFound" (
    "number" INTEGER NOT NULL,
    "imperfection" TEXT COLLATE "C" NOT NULL,
    "count" INTEGER NOT NULL,
    "rank" INTEGER NOT NULL,

    CONSTRAINT "BeadFound_pkey" PRIMARY KEY ("number","imperfection")
);

-- CreateTable
CREATE TABLE "BeadCard" (
    "number" INTEGER NOT NULL,
    "card" JSON NOT NULL,

    CONSTRAINT "BeadCard_pkey" PRIMARY KEY ("number")
);

-- CreateTable
CREATE TABLE "SavedSetup" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "setup" JSON NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "SavedSetup_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Setting" (
    "key" TEXT COLLATE "C" NOT NULL,
    "value" JSON NOT NULL,

    CONSTRAINT "Setting_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C",
    "salt" TEXT COLLATE "C",
    "mark" TEXT COLLATE "C",
    "role" TEXT COLLATE "C" NOT NULL,
    "userId" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "removedAt" TIMESTAMP(3),

    CONSTRAINT "Person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Group" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "closedAt" TIMESTAMP(3),

    CONSTRAINT "Group_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "GroupMember" (
    "groupId" TEXT COLLATE "C" NOT NULL,
    "personId" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "GroupMember_pkey" PRIMARY KEY ("groupId","personId")
);

-- CreateTable
CREATE TABLE "Exercise" (
    "id" TEXT COLLATE "C" NOT NULL,
    "groupId" TEXT COLLATE "C" NOT NULL,
    "title" TEXT COLLATE "C" NOT NULL,
    "content" JSON NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "code" TEXT COLLATE "C" NOT NULL,
    "open" BOOLEAN NOT NULL DEFAULT true,
    "withoutAccount" BOOLEAN NOT NULL DEFAULT true,
    "dueAt" TIMESTAMP(3),
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Exercise_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "HandIn" (
    "id" TEXT COLLATE "C" NOT NULL,
    "exerciseId" TEXT COLLATE "C" NOT NULL,
    "beadId" TEXT COLLATE "C" NOT NULL,
    "personId" TEXT COLLATE "C",
    "givenName" TEXT COLLATE "C",
    "note" TEXT COLLATE "C",
    "secretHash" TEXT COLLATE "C" NOT NULL,
    "handedInAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "HandIn_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Feedback" (
    "handInId" TEXT COLLATE "C" NOT NULL,
    "authorId" TEXT COLLATE "C",
    "revision" INTEGER NOT NULL DEFAULT 1,
    "draft" JSON NOT NULL,
    "returned" TEXT COLLATE "C",
    "digest" TEXT COLLATE "C",
    "returnedAt" TIMESTAMP(3),
    "reply" TEXT COLLATE "C",
    "repliedAt" TIMESTAMP(3),

    CONSTRAINT "Feedback_pkey" PRIMARY KEY ("handInId")
);

-- CreateTable
CREATE TABLE "Phrase" (
    "id" TEXT COLLATE "C" NOT NULL,
    "text" TEXT COLLATE "C" NOT NULL,
    "place" INTEGER NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Phrase_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ShopCriteria" (
    "id" TEXT COLLATE "C" NOT NULL,
    "key" TEXT COLLATE "C" NOT NULL,
    "version" INTEGER NOT NULL,
    "content" JSON NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "retiredAt" TIMESTAMP(3),

    CONSTRAINT "ShopCriteria_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Instrument" (
    "id" TEXT COLLATE "C" NOT NULL,
    "content" JSON NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "retiredAt" TIMESTAMP(3),

    CONSTRAINT "Instrument_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT COLLATE "C" NOT NULL,
    "number" INTEGER NOT NULL,
    "content" JSON NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Job_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Inspection" (
    "id" TEXT COLLATE "C" NOT NULL,
    "number" INTEGER NOT NULL,
    "jobId" TEXT COLLATE "C" NOT NULL,
    "draft" JSON NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Inspection_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SignedRevision" (
    "id" TEXT COLLATE "C" NOT NULL,
    "inspectionId" TEXT COLLATE "C" NOT NULL,
    "revision" INTEGER NOT NULL,
    "content" TEXT COLLATE "C" NOT NULL,
    "digest" TEXT COLLATE "C" NOT NULL,
    "signedById" TEXT COLLATE "C" NOT NULL,
    "signedAt" TEXT COLLATE "C" NOT NULL,
    "reason" TEXT COLLATE "C",

    CONSTRAINT "SignedRevision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SigningKey" (
    "id" TEXT COLLATE "C" NOT NULL,
    "algorithm" TEXT COLLATE "C" NOT NULL,
    "publicKey" TEXT COLLATE "C" NOT NULL,
    "origin" TEXT COLLATE "C" NOT NULL,
    "holder" TEXT COLLATE "C" NOT NULL,
    "personId" TEXT COLLATE "C",
    "from" TEXT COLLATE "C" NOT NULL,
    "reason" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "SigningKey_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "KeyEvent" (
    "id" TEXT COLLATE "C" NOT NULL,
    "keyId" TEXT COLLATE "C" NOT NULL,
    "what" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "reason" TEXT COLLATE "C" NOT NULL,
    "whose" TEXT COLLATE "C",

    CONSTRAINT "KeyEvent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SealedKey" (
    "keyId" TEXT COLLATE "C" NOT NULL,
    "box" JSON NOT NULL,
    "lockedAt" TEXT COLLATE "C" NOT NULL,
    "lockedBy" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "SealedKey_pkey" PRIMARY KEY ("keyId")
);

-- CreateTable
CREATE TABLE "KeySignature" (
    "subject" TEXT COLLATE "C" NOT NULL,
    "digest" TEXT COLLATE "C" NOT NULL,
    "keyId" TEXT COLLATE "C" NOT NULL,
    "algorithm" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "headSeq" INTEGER,
    "headHash" TEXT COLLATE "C",
    "signature" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "KeySignature_pkey" PRIMARY KEY ("subject")
);

-- CreateTable
CREATE TABLE "LogEntry" (
    "seq" INTEGER NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "by" TEXT COLLATE "C" NOT NULL,
    "action" TEXT COLLATE "C" NOT NULL,
    "subject" TEXT COLLATE "C" NOT NULL,
    "digest" TEXT COLLATE "C",
    "detail" TEXT COLLATE "C" NOT NULL,
    "previous" TEXT COLLATE "C" NOT NULL,
    "hash" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "LogEntry_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "SavedFilter" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "query" JSON NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SavedFilter_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "User" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "email" TEXT COLLATE "C" NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT COLLATE "C",
    "username" TEXT COLLATE "C",
    "displayUsername" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "User_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT COLLATE "C" NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "token" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "ipAddress" TEXT COLLATE "C",
    "userAgent" TEXT COLLATE "C",
    "userId" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C" NOT NULL,
    "providerId" TEXT COLLATE "C" NOT NULL,
    "userId" TEXT COLLATE "C" NOT NULL,
    "accessToken" TEXT COLLATE "C",
    "refreshToken" TEXT COLLATE "C",
    "idToken" TEXT COLLATE "C",
    "accessTokenExpiresAt" TIMESTAMP(3),
    "refreshTokenExpiresAt" TIMESTAMP(3),
    "scope" TEXT COLLATE "C",
    "password" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT COLLATE "C" NOT NULL,
    "identifier" TEXT COLLATE "C" NOT NULL,
    "value" TEXT COLLATE "C" NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Apikey" (
    "id" TEXT COLLATE "C" NOT NULL,
    "configId" TEXT COLLATE "C" NOT NULL DEFAULT 'default',
    "name" TEXT COLLATE "C",
    "start" TEXT COLLATE "C",
    "referenceId" TEXT COLLATE "C" NOT NULL,
    "prefix" TEXT COLLATE "C",
    "key" TEXT COLLATE "C" NOT NULL,
    "refillInterval" INTEGER,
    "refillAmount" INTEGER,
    "lastRefillAt" TIMESTAMP(3),
    "enabled" BOOLEAN DEFAULT true,
    "rateLimitEnabled" BOOLEAN DEFAULT true,
    "rateLimitTimeWindow" INTEGER,
    "rateLimitMax" INTEGER,
    "requestCount" INTEGER DEFAULT 0,
    "remaining" INTEGER,
    "lastRequest" TIMESTAMP(3),
    "expiresAt" TIMESTAMP(3),
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "permissions" TEXT COLLATE "C",
    "metadata" TEXT COLLATE "C",

    CONSTRAINT "Apikey_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Bead_number_key" ON "Bead"("number");

-- CreateIndex
CREATE INDEX "Bead_createdAt_idx" ON "Bead"("createdAt");

-- CreateIndex
CREATE INDEX "Bead_previousId_idx" ON "Bead"("previousId");

-- CreateIndex
CREATE INDEX "Bead_welderId_idx" ON "Bead"("welderId");

-- CreateIndex
CREATE INDEX "Bead_jobId_idx" ON "Bead"("jobId");

-- CreateIndex
CREATE INDEX "DeletedBead_beadId_idx" ON "DeletedBead"("beadId");

-- CreateIndex
CREATE INDEX "DeletedBead_number_idx" ON "DeletedBead"("number");

-- CreateIndex
CREATE INDEX "Photo_sha256_idx" ON "Photo"("sha256");

-- CreateIndex
CREATE UNIQUE INDEX "Photo_beadId_sha256_key" ON "Photo"("beadId", "sha256");

-- CreateIndex
CREATE UNIQUE INDEX "BeadFacts_beadId_key" ON "BeadFacts"("beadId");

-- CreateIndex
CREATE UNIQUE INDEX "BeadFacts_place_key" ON "BeadFacts"("place");

-- CreateIndex
CREATE INDEX "BeadFacts_stamp_idx" ON "BeadFacts"("stamp");

-- CreateIndex
CREATE INDEX "BeadFacts_weighedBy_idx" ON "BeadFacts"("weighedBy");

-- CreateIndex
CREATE INDEX "BeadFacts_titleKey_place_idx" ON "BeadFacts"("titleKey", "place" DESC);

-- CreateIndex
CREATE INDEX "BeadFacts_welderKey_place_idx" ON "BeadFacts"("welderKey", "place" DESC);

-- CreateIndex
CREATE INDEX "BeadFacts_welder_place_idx" ON "BeadFacts"("welder", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_welderId_place_idx" ON "BeadFacts"("welderId", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_jobId_place_idx" ON "BeadFacts"("jobId", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_previousId_place_idx" ON "BeadFacts"("previousId", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_process_place_idx" ON "BeadFacts"("process", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_transfer_place_idx" ON "BeadFacts"("transfer", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_electrodeClass_place_idx" ON "BeadFacts"("electrodeClass", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_polarity_place_idx" ON "BeadFacts"("polarity", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_gas_place_idx" ON "BeadFacts"("gas", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_joint_place_idx" ON "BeadFacts"("joint", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_position_place_idx" ON "BeadFacts"("position", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_progression_place_idx" ON "BeadFacts"("progression", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_baseMetal_place_idx" ON "BeadFacts"("baseMetal", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_surface_place_idx" ON "BeadFacts"("surface", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_inputPower_place_idx" ON "BeadFacts"("inputPower", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_criteriaId_place_idx" ON "BeadFacts"("criteriaId", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_verdict_place_idx" ON "BeadFacts"("verdict", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_outcome_place_idx" ON "BeadFacts"("outcome", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_confirmedCause_place_idx" ON "BeadFacts"("confirmedCause", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_outcome_triedCause_previousId_stamp_idx" ON "BeadFacts"("outcome", "triedCause", "previousId", "stamp");

-- CreateIndex
CREATE INDEX "BeadFound_imperfection_number_idx" ON "BeadFound"("imperfection", "number");

-- CreateIndex
CREATE UNIQUE INDEX "SavedSetup_name_key" ON "SavedSetup"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Person_userId_key" ON "Person"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "Group_name_key" ON "Group"("name");

-- CreateIndex
CREATE INDEX "GroupMember_personId_idx" ON "GroupMember"("personId");

-- CreateIndex
CREATE UNIQUE INDEX "Exercise_code_key" ON "Exercise"("code");

-- CreateIndex
CREATE INDEX "Exercise_groupId_idx" ON "Exercise"("groupId");

-- CreateIndex
CREATE UNIQUE INDEX "HandIn_beadId_key" ON "HandIn"("beadId");

-- CreateIndex
CREATE UNIQUE INDEX "HandIn_secretHash_key" ON "HandIn"("secretHash");

-- CreateIndex
CREATE INDEX "HandIn_exerciseId_idx" ON "HandIn"("exerciseId");

-- CreateIndex
CREATE INDEX "HandIn_personId_idx" ON "HandIn"("personId");

-- CreateIndex
CREATE UNIQUE INDEX "ShopCriteria_key_version_key" ON "ShopCriteria"("key", "version");

-- CreateIndex
CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Inspection_number_key" ON "Inspection"("number");

-- CreateIndex
CREATE INDEX "Inspection_jobId_idx" ON "Inspection"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "SignedRevision_inspectionId_revision_key" ON "SignedRevision"("inspectionId", "revision");

-- CreateIndex
CREATE INDEX "SigningKey_personId_idx" ON "SigningKey"("personId");

-- CreateIndex
CREATE INDEX "KeyEvent_keyId_idx" ON "KeyEvent"("keyId");

-- CreateIndex
CREATE UNIQUE INDEX "LogEntry_hash_key" ON "LogEntry"("hash");

-- CreateIndex
CREATE INDEX "LogEntry_subject_seq_idx" ON "LogEntry"("subject", "seq");

-- CreateIndex
CREATE UNIQUE INDEX "SavedFilter_name_key" ON "SavedFilter"("name");

-- CreateIndex
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");

-- CreateIndex
CREATE UNIQUE INDEX "User_username_key" ON "User"("username");

-- CreateIndex
CREATE UNIQUE INDEX "Session_token_key" ON "Session"("token");

-- CreateIndex
CREATE INDEX "Session_userId_idx" ON "Session"("userId");

-- CreateIndex
CREATE INDEX "Account_userId_idx" ON "Account"("userId");

-- CreateIndex
CREATE INDEX "Verification_identifier_idx" ON "Verification"("identifier");

-- CreateIndex
CREATE INDEX "Apikey_configId_idx" ON "Apikey"("configId");

-- CreateIndex
CREATE INDEX "Apikey_referenceId_idx" ON "Apikey"("referenceId");

-- CreateIndex
CREATE INDEX "Apikey_key_idx" ON "Apikey"("key");

-- AddForeignKey
ALTER TABLE "Bead" ADD CONSTRAINT "Bead_previousId_fkey" FOREIGN KEY ("previousId") REFERENCES "Bead"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Bead" ADD CONSTRAINT "Bead_welderId_fkey" FOREIGN KEY ("welderId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Bead" ADD CONSTRAINT "Bead_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_beadId_fkey" FOREIGN KEY ("beadId") REFERENCES "Bead"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BeadFacts" ADD CONSTRAINT "BeadFacts_beadId_fkey" FOREIGN KEY ("beadId") REFERENCES "Bead"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BeadFound" ADD CONSTRAINT "BeadFound_number_fkey" FOREIGN KEY ("number") REFERENCES "BeadFacts"("number") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "BeadCard" ADD CONSTRAINT "BeadCard_number_fkey" FOREIGN KEY ("number") REFERENCES "BeadFacts"("number") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GroupMember" ADD CONSTRAINT "GroupMember_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "GroupMember" ADD CONSTRAINT "GroupMember_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Exercise" ADD CONSTRAINT "Exercise_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "Group"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HandIn" ADD CONSTRAINT "HandIn_exerciseId_fkey" FOREIGN KEY ("exerciseId") REFERENCES "Exercise"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HandIn" ADD CONSTRAINT "HandIn_beadId_fkey" FOREIGN KEY ("beadId") REFERENCES "Bead"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HandIn" ADD CONSTRAINT "HandIn_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Feedback" ADD CONSTRAINT "Feedback_handInId_fkey" FOREIGN KEY ("handInId") REFERENCES "HandIn"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Inspection" ADD CONSTRAINT "Inspection_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SignedRevision" ADD CONSTRAINT "SignedRevision_inspectionId_fkey" FOREIGN KEY ("inspectionId") REFERENCES "Inspection"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "KeyEvent" ADD CONSTRAINT "KeyEvent_keyId_fkey" FOREIGN KEY ("keyId") REFERENCES "SigningKey"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SealedKey" ADD CONSTRAINT "SealedKey_keyId_fkey" FOREIGN KEY ("keyId") REFERENCES "SigningKey"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Account" ADD CONSTRAINT "Account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;
