import { takeRegions } from "#web/take-regions";
import { write } from "#web/write";

export const dynamic = "force-dynamic";

export const POST = write(takeRegions);
