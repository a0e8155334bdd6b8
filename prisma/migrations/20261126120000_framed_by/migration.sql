-- Who framed the mark that was looked up: the person, a proposal, or nobody. What is there already was either drawn or
-- the whole photograph, and nothing tells which.
ALTER TABLE "look_up_photographs" ADD COLUMN "framed_by" TEXT NOT NULL DEFAULT 'person';
