-- A look-up holds several photographs, of one mark or of several on one object.
CREATE TABLE "look_up_photographs" (
    "look_up_id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "mark" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "region_x" DOUBLE PRECISION NOT NULL,
    "region_y" DOUBLE PRECISION NOT NULL,
    "region_width" DOUBLE PRECISION NOT NULL,
    "region_height" DOUBLE PRECISION NOT NULL,
    "region_turn" DOUBLE PRECISION NOT NULL,
    CONSTRAINT "look_up_photographs_pkey" PRIMARY KEY ("look_up_id", "position")
);

CREATE INDEX "look_up_photographs_sha256_idx" ON "look_up_photographs"("sha256");

ALTER TABLE "look_up_photographs" ADD CONSTRAINT "look_up_photographs_look_up_id_fkey"
    FOREIGN KEY ("look_up_id") REFERENCES "look_ups"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Look-ups that are kept already have one photograph, of one mark.
INSERT INTO "look_up_photographs"
SELECT "id", 1, 1, "sha256", "width", "height", "region_x", "region_y", "region_width", "region_height", "region_turn"
FROM "look_ups";

DROP INDEX "look_ups_sha256_idx";

ALTER TABLE "look_ups"
    DROP COLUMN "sha256",
    DROP COLUMN "width",
    DROP COLUMN "height",
    DROP COLUMN "region_x",
    DROP COLUMN "region_y",
    DROP COLUMN "region_width",
    DROP COLUMN "region_height",
    DROP COLUMN "region_turn",
    ADD COLUMN "other_marks" JSONB NOT NULL DEFAULT '[]',
    ADD COLUMN "makers" JSONB NOT NULL DEFAULT '[]';
