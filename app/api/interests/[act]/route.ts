import { changeInterests } from "#web/change-interests";
import { writeAs } from "#web/write-as";

type Context = { readonly params: Promise<{ readonly act: string }> };

export const POST = writeAs<Context>("declare an interest", async (request, actor, { params }) =>
  changeInterests(request, actor, (await params).act),
);
