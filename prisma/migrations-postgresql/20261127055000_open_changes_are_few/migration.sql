-- A bead that names a change has, in almost every record, an outcome too. Counted apart from one another, both columns make the
-- planner expect thousands of beads that wait, and read them all to find none. SQLite goes by the index without being told.
CREATE STATISTICS "BeadFacts_outcome_triedCause" (mcv) ON "outcome", "triedCause" FROM "BeadFacts";
