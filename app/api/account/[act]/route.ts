import { changeAccount } from "#web/change-account";
import { writeAs } from "#web/write-as";

type Context = { readonly params: Promise<{ readonly act: string }> };

export const POST = writeAs<Context>("change one's account", async (request, actor, { params }) =>
  changeAccount(request, actor, (await params).act),
);
