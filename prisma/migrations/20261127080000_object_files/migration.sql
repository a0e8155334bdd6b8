-- Object files: one physical object each, what is known of it as immutable numbered versions.
CREATE TABLE "object_files" (
    "id" TEXT NOT NULL,
    "owner_id" UUID NOT NULL,
    "title" TEXT NOT NULL,
    "family" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "share_hash" TEXT,
    "shared_at" TIMESTAMPTZ(3),
    "published_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "object_files_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "object_files_owner_id_updated_at_idx" ON "object_files"("owner_id", "updated_at");
CREATE UNIQUE INDEX "object_files_share_hash_key" ON "object_files"("share_hash");
ALTER TABLE "object_files" ADD CONSTRAINT "object_files_owner_id_fkey" FOREIGN KEY ("owner_id") REFERENCES "members"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- The content is kept as the very text that was hashed.
CREATE TABLE "object_file_versions" (
    "file_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "content" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "command" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID NOT NULL,
    "by_name" TEXT NOT NULL,

    CONSTRAINT "object_file_versions_pkey" PRIMARY KEY ("file_id","number")
);
ALTER TABLE "object_file_versions" ADD CONSTRAINT "object_file_versions_file_id_fkey" FOREIGN KEY ("file_id") REFERENCES "object_files"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
CREATE TRIGGER object_file_versions_are_immutable BEFORE UPDATE OR DELETE ON "object_file_versions"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER object_file_versions_are_never_emptied BEFORE TRUNCATE ON "object_file_versions"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- Who was let in and shut out, when and by whom; who is in now stands in object_file_members.
CREATE TABLE "object_file_accesses" (
    "file_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "type" TEXT NOT NULL,
    "member_id" UUID,
    "member_name" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID NOT NULL,
    "by_name" TEXT NOT NULL,

    CONSTRAINT "object_file_accesses_pkey" PRIMARY KEY ("file_id","number")
);
ALTER TABLE "object_file_accesses" ADD CONSTRAINT "object_file_accesses_file_id_fkey" FOREIGN KEY ("file_id") REFERENCES "object_files"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
CREATE TRIGGER object_file_accesses_are_immutable BEFORE UPDATE OR DELETE ON "object_file_accesses"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER object_file_accesses_are_never_emptied BEFORE TRUNCATE ON "object_file_accesses"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

CREATE TABLE "object_file_members" (
    "file_id" TEXT NOT NULL,
    "member_id" UUID NOT NULL,
    "way" TEXT NOT NULL,

    CONSTRAINT "object_file_members_pkey" PRIMARY KEY ("file_id","member_id")
);
CREATE INDEX "object_file_members_member_id_idx" ON "object_file_members"("member_id");
ALTER TABLE "object_file_members" ADD CONSTRAINT "object_file_members_file_id_fkey" FOREIGN KEY ("file_id") REFERENCES "object_files"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "object_file_members" ADD CONSTRAINT "object_file_members_member_id_fkey" FOREIGN KEY ("member_id") REFERENCES "members"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Images that a file shows or ever showed: versions are for ever, and so are their images.
CREATE TABLE "object_file_images" (
    "file_id" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "added_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "object_file_images_pkey" PRIMARY KEY ("file_id","sha256")
);
CREATE INDEX "object_file_images_sha256_idx" ON "object_file_images"("sha256");
ALTER TABLE "object_file_images" ADD CONSTRAINT "object_file_images_file_id_fkey" FOREIGN KEY ("file_id") REFERENCES "object_files"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
