import { reembedForOperator, showModels } from "#web/models-for-operator";
import { write } from "#web/write";

export const dynamic = "force-dynamic";

export const GET = showModels;

export const POST = write(reembedForOperator);
