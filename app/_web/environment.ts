import { join, resolve } from "node:path";
import { z } from "zod";
import { DEFAULT_POLICY, type ReviewPolicy } from "#core/review/policy";

/** A minute and a bit: in a demo nobody waits three days. */
const DEMO_HOURS = 0.02;

const flag = z
  .enum(["0", "1"])
  .default("0")
  .transform((v) => v === "1");

const schema = z.object({
  /** Address of a Postgres server with pgvector; the embedded database without it. */
  DATABASE_URL: z
    .string()
    .regex(/^postgres(ql)?:\/\//, "must begin with postgres:// or postgresql://")
    .optional(),
  /** Where images and the embedded database lie. */
  COUNTERMARK_DATA: z.string().min(1).default("data"),
  /** 1 offers the demo's photographs to try. */
  COUNTERMARK_DEMO: flag,
  /** Days a look-up is kept unless its owner keeps it. */
  COUNTERMARK_LOOKUP_DAYS: z.coerce.number().min(0.01).max(3650).default(30),
  /** Days that the vectors of a retired model are kept, in case one wants to go back. */
  COUNTERMARK_OLD_VECTORS_DAYS: z.coerce.number().min(0).max(3650).default(7),
  /** Hours that a review is open at least. */
  COUNTERMARK_REVIEW_HOURS: z.coerce.number().min(0.001).max(8760).optional(),
  /** The address people reach this host at, when a proxy in front of it changes the Host header. */
  COUNTERMARK_ORIGIN: z.url().optional(),
  /** Encrypts what a signed-in browser holds; without it, one is made and kept in the data folder. */
  NEXTAUTH_SECRET: z.string().min(32).optional(),
  /** Another way to sign in: an OpenID Connect provider, and as what this host is known there. */
  COUNTERMARK_OIDC_ISSUER: z.url().optional(),
  COUNTERMARK_OIDC_CLIENT_ID: z.string().optional(),
  COUNTERMARK_OIDC_CLIENT_SECRET: z.string().optional(),
  /** What its button says. */
  COUNTERMARK_OIDC_NAME: z.string().max(60).optional(),
});

const SECRETS = ["DATABASE_URL", "NEXTAUTH_SECRET", "COUNTERMARK_OIDC_CLIENT_SECRET"];

export type Environment = {
  readonly databaseUrl: string | null;
  readonly dataFolder: string;
  readonly prismaFolder: string;
  readonly demoFolder: string | null;
  readonly lookUpDays: number;
  readonly oldVectorsDays: number;
  readonly origin: string | null;
  /** By which the reviews go that begin now. */
  readonly policy: ReviewPolicy;
  readonly secret: string | null;
  readonly oidc: OidcSettings | null;
};

export type OidcSettings = {
  readonly issuer: string;
  readonly clientId: string;
  readonly clientSecret: string;
  readonly name: string;
};

/**
 * The settings of this host, from environment variables.
 * @throws Error naming every variable that is wrong, its rule and the value received
 */
export function readEnvironment(variables: NodeJS.ProcessEnv = process.env): Environment {
  const set = Object.fromEntries(Object.entries(variables).filter(([, value]) => value !== ""));
  const parsed = schema.safeParse(set);
  if (!parsed.success)
    throw new Error(
      parsed.error.issues
        .map(({ path, message }) => {
          const name = String(path[0]);
          // What is or may carry a secret is not repeated in a message.
          const value = SECRETS.includes(name) ? "(not shown)" : JSON.stringify(variables[name]);
          return `${name}: ${message}. Received ${value}.`;
        })
        .join("\n"),
    );
  const env = parsed.data;
  const root = process.cwd();
  return {
    databaseUrl: env.DATABASE_URL ?? null,
    dataFolder: resolve(/* turbopackIgnore: true */ root, env.COUNTERMARK_DATA),
    prismaFolder: join(/* turbopackIgnore: true */ root, "prisma"),
    demoFolder: env.COUNTERMARK_DEMO ? join(/* turbopackIgnore: true */ root, "seed", "demo") : null,
    lookUpDays: env.COUNTERMARK_LOOKUP_DAYS,
    oldVectorsDays: env.COUNTERMARK_OLD_VECTORS_DAYS,
    origin: env.COUNTERMARK_ORIGIN ?? null,
    policy: {
      ...DEFAULT_POLICY,
      hours: env.COUNTERMARK_REVIEW_HOURS ?? (env.COUNTERMARK_DEMO ? DEMO_HOURS : DEFAULT_POLICY.hours),
    },
    secret: env.NEXTAUTH_SECRET ?? null,
    oidc: oidcOf(env),
  };
}

/** The provider to sign in at; its settings go together. */
function oidcOf(env: z.infer<typeof schema>): OidcSettings | null {
  const {
    COUNTERMARK_OIDC_ISSUER: issuer,
    COUNTERMARK_OIDC_CLIENT_ID: clientId,
    COUNTERMARK_OIDC_CLIENT_SECRET: clientSecret,
  } = env;
  if (issuer === undefined && clientId === undefined && clientSecret === undefined) return null;
  if (issuer === undefined || clientId === undefined || clientSecret === undefined)
    throw new Error(
      "COUNTERMARK_OIDC_ISSUER, COUNTERMARK_OIDC_CLIENT_ID, COUNTERMARK_OIDC_CLIENT_SECRET: must be set together.",
    );
  return { issuer, clientId, clientSecret, name: env.COUNTERMARK_OIDC_NAME ?? new URL(issuer).host };
}
