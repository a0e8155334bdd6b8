-- An answer keeps the probabilities it was given: each entry's among its matches, and that none fits here, with the
-- day of the calibration that gave them. Answers from before, and of models without one, have none.
ALTER TABLE "look_ups" ADD COLUMN "none_probability" DOUBLE PRECISION;
ALTER TABLE "look_ups" ADD COLUMN "calibrated" TEXT;
