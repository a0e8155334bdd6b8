import type { FieldError } from "#core/field-error";
import type { Account, Member, MemberEvent, OpenSession, Standing } from "#core/members/account";
import type { Interest } from "#core/members/member";
import type { Result } from "#core/result";

/** A member as somebody joins: the id is made unless it is given. */
type NewMember = {
  readonly id?: string;
  readonly name: string;
  /** In lower case. */
  readonly email: string;
  readonly passwordHash: string | null;
  readonly about: string;
  readonly at: Date;
};

/** Who a member is at an OpenID Connect provider. */
export type IdentityElsewhere = { readonly provider: string; readonly subject: string };

/** Members. Their appointments and suspensions go on the trail "members" in the same step. */
export type Members = {
  /** @returns the id; null when the e-mail address is taken */
  create(member: NewMember): Promise<string | null>;
  find(id: string): Promise<Account | null>;
  /** @param email in lower case */
  byEmail(email: string): Promise<{ readonly id: string; readonly passwordHash: string | null } | null>;
  byIdentity(identity: IdentityElsewhere): Promise<string | null>;
  /** Ties an identity to a member; one that is tied already stays as it is. */
  addIdentity(member: string, identity: IdentityElsewhere): Promise<void>;
  update(
    id: string,
    changes: { readonly name?: string; readonly about?: string; readonly passwordHash?: string | null },
  ): Promise<void>;
  /**
   * Decides on a member's standing with nobody else changing it meanwhile, writes down what happened and what follows.
   * @returns null when there is no such member
   */
  act(
    id: string,
    decide: (
      member: Member,
    ) => Result<{ readonly events: readonly MemberEvent[]; readonly after: Standing }, FieldError>,
  ): Promise<Result<readonly MemberEvent[], FieldError> | null>;
  /** By name; without words, all. */
  search(words: string, after: number, limit: number): Promise<readonly Member[]>;
};

/** What members have declared. */
export type Interests = {
  /** Declares it, unless the same is declared and not ended. */
  declare(member: string, interest: Interest, at: Date): Promise<void>;
  /** @returns false when the member has no such interest; one that is ended stays as it is */
  end(member: string, id: string, at: Date): Promise<boolean>;
};

/** Where members are signed in, each known by the SHA-256 of the browser's key. */
export type Sessions = {
  open(session: {
    readonly id: string;
    readonly member: string;
    readonly at: Date;
    readonly expiresAt: Date;
    readonly userAgent: string;
  }): Promise<void>;
  /** One that is neither over nor revoked, with its member. */
  find(id: string, now: Date): Promise<{ readonly account: Account; readonly lastSeenAt: Date } | null>;
  seen(id: string, now: Date): Promise<void>;
  revoke(member: string, id: string, now: Date): Promise<void>;
  /** @param except the one that stays open */
  revokeAll(member: string, now: Date, except?: string): Promise<void>;
  /** Those that are open, the last seen first. */
  list(member: string, now: Date): Promise<readonly OpenSession[]>;
  /** Removes those that are over or revoked. @returns how many */
  forget(now: Date): Promise<number>;
};

/** Attempts to sign in, kept for all processes of a host together. */
export type SignInAttempts = {
  /** Writes an attempt down before it is judged, so that many at once are counted too. */
  begin(
    attempt: { readonly email: string; readonly client: string; readonly at: Date },
    since: Date,
  ): Promise<{
    readonly id: string;
    readonly byEmail: readonly number[];
    readonly byClient: readonly number[];
  }>;
  /** Takes one back that did not fail. */
  forget(id: string): Promise<void>;
};

export type Passwords = {
  hash(password: string): Promise<string>;
  /** @param hash null for who has no password: it takes as long, and is never right */
  verify(hash: string | null, password: string): Promise<boolean>;
};
