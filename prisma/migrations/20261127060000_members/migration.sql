-- Members, what they have declared, where they are signed in, and attempts to sign in.
CREATE TABLE "members" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "password_hash" TEXT,
    "is_moderator" BOOLEAN NOT NULL DEFAULT false,
    "is_administrator" BOOLEAN NOT NULL DEFAULT false,
    "fields" TEXT[] DEFAULT ARRAY[]::TEXT[],
    "suspended_at" TIMESTAMPTZ(3),
    "about" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "members_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "interests" (
    "id" UUID NOT NULL,
    "member_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "slug" TEXT NOT NULL,
    "stake" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "declared_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "interests_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "sessions" (
    "id" TEXT NOT NULL,
    "member_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),
    "user_agent" TEXT NOT NULL,

    CONSTRAINT "sessions_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "identities" (
    "provider" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "member_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "identities_pkey" PRIMARY KEY ("provider","subject")
);

CREATE TABLE "sign_in_attempts" (
    "id" UUID NOT NULL,
    "by_email" TEXT NOT NULL,
    "by_client" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sign_in_attempts_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "members_email_key" ON "members"("email");
CREATE INDEX "members_name_idx" ON "members"("name");
CREATE INDEX "interests_member_id_idx" ON "interests"("member_id");
CREATE INDEX "interests_kind_slug_idx" ON "interests"("kind", "slug");
CREATE INDEX "sessions_member_id_idx" ON "sessions"("member_id");
CREATE INDEX "sessions_expires_at_idx" ON "sessions"("expires_at");
CREATE INDEX "identities_member_id_idx" ON "identities"("member_id");
CREATE INDEX "sign_in_attempts_by_email_at_idx" ON "sign_in_attempts"("by_email", "at");
CREATE INDEX "sign_in_attempts_by_client_at_idx" ON "sign_in_attempts"("by_client", "at");
CREATE INDEX "sign_in_attempts_at_idx" ON "sign_in_attempts"("at");

ALTER TABLE "interests" ADD CONSTRAINT "interests_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "members"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "members"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "identities" ADD CONSTRAINT "identities_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "members"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A declared interest stays on record: the one change it takes is to be ended, once.
CREATE FUNCTION refuse_interest_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' AND OLD.ended_at IS NULL AND NEW.ended_at IS NOT NULL
    AND ROW(NEW.id, NEW.member_id, NEW.kind, NEW.slug, NEW.stake, NEW.note, NEW.declared_at)
      IS NOT DISTINCT FROM ROW(OLD.id, OLD.member_id, OLD.kind, OLD.slug, OLD.stake, OLD.note, OLD.declared_at)
  THEN RETURN NEW;
  END IF;
  RAISE EXCEPTION 'interests are kept as they were declared: % refused', TG_OP;
END $$;

CREATE TRIGGER interests_are_kept BEFORE UPDATE OR DELETE ON "interests"
  FOR EACH ROW EXECUTE FUNCTION refuse_interest_change();
