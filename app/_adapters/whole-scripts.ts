import type { PrismaPg } from "@prisma/adapter-pg";

type Factory = InstanceType<typeof PrismaPg>;

/** The engine opens connections and leaves them open; the embedded database has one to give. */
type Closing = { closeAll(): Promise<void> };

/**
 * A driver adapter that sends a script to the server as one query. The stock one cuts it at every semicolon, also
 * inside the body of a function; whole, it is one transaction besides: a migration applies entirely or not at all.
 */
export function withWholeScripts(factory: Factory): Factory & Closing {
  const opened = new Set<{ dispose(): Promise<void> }>();
  const whole: Pick<Factory, "connect"> & Closing = {
    async connect() {
      const adapter = await factory.connect();
      adapter.executeScript = async (script) => {
        await adapter.underlyingDriver().query(script);
      };
      opened.add(adapter);
      return adapter;
    },
    async closeAll() {
      for (const adapter of opened) await adapter.dispose();
      opened.clear();
    },
  };
  return Object.assign(Object.create(factory) as Factory, whole);
}
