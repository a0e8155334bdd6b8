import { join } from "node:path";
import { createAligner } from "#adapters/aligner";
import { createBlobs, createPictures } from "#adapters/blobs";
import { hashOfValue } from "#adapters/canonical-json";
import { systemClock, systemKeys, systemRandomness } from "#adapters/chance";
import { createContents } from "#adapters/contents-store";
import { type Database, openDatabase } from "#adapters/database";
import { createDemoMembers } from "#adapters/demo-members";
import { createDrafts } from "#adapters/drafts-store";
import { createEntries } from "#adapters/entries-store";
import { createImageReader } from "#adapters/image-reader";
import { openImportFolder } from "#adapters/import-folder";
import { createInterests } from "#adapters/interests-store";
import { createEmbedders } from "#adapters/kept-models";
import { keepSecret } from "#adapters/kept-secret";
import { createLettersReader } from "#adapters/letters-reader";
import { createLookUps } from "#adapters/look-ups-store";
import { createMakers } from "#adapters/makers-store";
import { createMarkFinder } from "#adapters/mark-finder";
import { createMembers } from "#adapters/members-store";
import { createModels } from "#adapters/models-store";
import { createNearest } from "#adapters/nearest";
import { createObjectAccess } from "#adapters/object-access-store";
import { createObjectFiles } from "#adapters/object-files-store";
import { createObjectImages } from "#adapters/object-images-store";
import { argon2Passwords } from "#adapters/passwords";
import { createPhotographsToTry } from "#adapters/photographs-to-try";
import { createQuestions } from "#adapters/questions-store";
import { createQueue } from "#adapters/queue";
import { createReadings } from "#adapters/readings";
import { createReferences } from "#adapters/references-store";
import { packReport } from "#adapters/report/report-archive";
import { drawReport } from "#adapters/report/report-pdf";
import { createReviewLists } from "#adapters/review-lists";
import { createRevisions } from "#adapters/revisions-store";
import { createSessions } from "#adapters/sessions-store";
import { createSignInAttempts } from "#adapters/sign-in-attempts-store";
import { createSubmissions } from "#adapters/submissions-store";
import { createTrails } from "#adapters/trails-store";
import { settleModels } from "#usecases/settle-models";
import { settleTrails } from "#usecases/settle-trails";
import { type Environment, readEnvironment } from "./environment.ts";

/** Everything a use case may need from outside, wired to the real thing. */
export type Live = Awaited<ReturnType<typeof connect>>;

// Kept on the global object: a bundler may give each route its own copy of this module, and the embedded
// database can be opened once.
const held = globalThis as typeof globalThis & { countermarkLive?: Promise<Live> | undefined };

/** The wiring of this process; opens the database and loads the model the first time. */
export function live(): Promise<Live> {
  if (process.env.NEXT_PHASE === "phase-production-build")
    throw new Error(
      "The build must open no database: a page that reads from it must be made when it is asked for.",
    );
  held.countermarkLive ??= connect(readEnvironment()).catch((error: unknown) => {
    held.countermarkLive = undefined;
    throw error;
  });
  return held.countermarkLive;
}

/** Opens and wires everything for the given settings, and brings the model in place in; used by the scripts too. */
export async function connect(environment: Environment) {
  const database: Database = await openDatabase({
    url: environment.databaseUrl,
    dataFolder: environment.dataFolder,
    prismaFolder: environment.prismaFolder,
  });
  try {
    const wired = wire(environment, database, await openEmbedders(environment));
    await settleModels(wired);
    await settleTrails(wired);
    return { environment, database, ...wired };
  } catch (error) {
    await database.close();
    throw error;
  }
}

/** The models: the one in place, and those kept beside the images. */
export function openEmbedders({ dataFolder }: Environment) {
  return createEmbedders(join(/* turbopackIgnore: true */ dataFolder, "models"));
}

/** The wiring over an open database; `connect` opens one first. */
export function wire(
  environment: Environment,
  database: Database,
  embedders: Awaited<ReturnType<typeof createEmbedders>>,
) {
  const imagesFolder = join(/* turbopackIgnore: true */ environment.dataFolder, "images");
  return {
    embedders,
    models: createModels(database),
    aligner: createAligner(),
    letters: createLettersReader(),
    images: createImageReader(),
    marks: createMarkFinder(),
    blobs: createBlobs(imagesFolder),
    pictures: createPictures(imagesFolder),
    photographsToTry: createPhotographsToTry(environment.demoFolder),
    openImportFolder,
    // One look-up keeps a core busy; more at once only make everyone wait longer.
    queue: createQueue(2, 30),
    nearest: createNearest(database),
    lookUps: createLookUps(database),
    entries: createEntries(database),
    makers: createMakers(database),
    readings: createReadings(database),
    references: createReferences(database),
    questions: createQuestions(database),
    trails: createTrails(database),
    submissions: createSubmissions(database),
    contents: createContents(database),
    reviewLists: createReviewLists(database),
    hash: hashOfValue,
    policy: environment.policy,
    members: createMembers(database),
    interests: createInterests(database),
    sessions: createSessions(database),
    attempts: createSignInAttempts(database),
    passwords: argon2Passwords,
    secret: keepSecret(environment.secret, environment.dataFolder),
    demoMembers: createDemoMembers(environment.demoFolder),
    drafts: createDrafts(database),
    revisions: createRevisions(database),
    objectFiles: createObjectFiles(database),
    objectAccess: createObjectAccess(database),
    objectImages: createObjectImages(database),
    reports: { pdf: drawReport, archive: packReport },
    keys: systemKeys,
    // One after the other, so that an entry asked for twice is made once.
    makingEntries: createQueue(1, 20),
    clock: systemClock,
    randomness: systemRandomness,
  };
}
