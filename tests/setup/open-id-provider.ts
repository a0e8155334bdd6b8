import { createHash, generateKeyPairSync, randomBytes, sign } from "node:crypto";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";

export type Claims = Readonly<Record<string, unknown>>;

/**
 * An OpenID Connect provider for tests, on a port of its own: it lets whoever comes in as the person it is told, and
 * checks what the code flow with PKCE asks it to check (OpenID Connect Core 1.0, 3.1; RFC 7636).
 */
export async function openIdProvider(client: { readonly id: string; readonly secret: string }) {
  const { privateKey, publicKey } = generateKeyPairSync("rsa", { modulusLength: 2048 });
  const codes = new Map<string, { claims: Claims; challenge: string; redirect: string }>();
  let person: Claims = {};
  let issuer = "";

  const json = (body: object) => ({ status: 200, headers: { "content-type": "application/json" }, body });
  const configuration = () => ({
    issuer,
    authorization_endpoint: `${issuer}/authorize`,
    token_endpoint: `${issuer}/token`,
    jwks_uri: `${issuer}/keys`,
    response_types_supported: ["code"],
    subject_types_supported: ["public"],
    id_token_signing_alg_values_supported: ["RS256"],
  });
  const authorize = (query: URLSearchParams) => {
    const now = Math.floor(Date.now() / 1000);
    const code = randomBytes(16).toString("hex");
    const redirect = query.get("redirect_uri") ?? "";
    const claims = {
      iss: issuer,
      aud: client.id,
      iat: now,
      exp: now + 60,
      nonce: query.get("nonce"),
      ...person,
    };
    codes.set(code, { claims, challenge: query.get("code_challenge") ?? "", redirect });
    const back = new URL(redirect);
    back.searchParams.set("code", code);
    back.searchParams.set("state", query.get("state") ?? "");
    return { status: 302, headers: { location: back.href }, body: {} };
  };
  const token = (given: URLSearchParams, authorization: string) => {
    const known = codes.get(given.get("code") ?? "");
    const challenge = createHash("sha256")
      .update(given.get("code_verifier") ?? "")
      .digest("base64url");
    const basic = `Basic ${Buffer.from(`${client.id}:${client.secret}`).toString("base64")}`;
    const right =
      known &&
      known.challenge === challenge &&
      known.redirect === given.get("redirect_uri") &&
      authorization === basic;
    if (!right) return { status: 400, headers: {}, body: { error: "invalid_grant" } };
    codes.delete(given.get("code") ?? "");
    return json({ token_type: "Bearer", access_token: "none", id_token: signed(known.claims) });
  };
  const signed = (claims: Claims) => {
    const parts = [{ alg: "RS256", kid: "1" }, claims].map((part) =>
      Buffer.from(JSON.stringify(part)).toString("base64url"),
    );
    return [...parts, sign("sha256", Buffer.from(parts.join(".")), privateKey).toString("base64url")].join(
      ".",
    );
  };

  const server = createServer(async (request, response) => {
    const url = new URL(request.url ?? "/", issuer);
    let sent = "";
    for await (const chunk of request) sent += String(chunk);
    const answer =
      url.pathname === "/.well-known/openid-configuration"
        ? json(configuration())
        : url.pathname === "/keys"
          ? json({ keys: [{ ...publicKey.export({ format: "jwk" }), kid: "1", use: "sig", alg: "RS256" }] })
          : url.pathname === "/authorize"
            ? authorize(url.searchParams)
            : token(new URLSearchParams(sent), request.headers.authorization ?? "");
    response.writeHead(answer.status, answer.headers).end(JSON.stringify(answer.body));
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    issuer,
    /** Whom it lets in from now on. */
    letIn(claims: Claims): void {
      person = claims;
    },
    close: () => new Promise<void>((closed) => server.close(() => closed())),
  };
}
