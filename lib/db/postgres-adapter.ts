import { PrismaPg } from "@prisma/adapter-pg";
import { currentSite } from "@/lib/sites";

/**
 * Connections of one server, and of each site where there are several. Writers take one of them at most (`writeTogether`),
 * so lists are read meanwhile. Own estimates: those that nobody uses are given back after ten seconds.
 */
const MOST_CONNECTIONS = 10;
const MOST_OF_A_SITE = 4;

type Query = Parameters<Awaited<ReturnType<PrismaPg["connect"]>>["queryRaw"]>[0];
interface Asks {
  queryRaw(query: Query): Promise<unknown>;
  executeRaw(query: Query): Promise<unknown>;
}

/**
 * PostgreSQL, in its schema "public". A text there holds no zero character, which no keyboard writes and a machine may send:
 * it is kept as U+FFFD, and asked for as that.
 */
export function postgresAdapter(url: string): PrismaPg {
  const pool = { connectionString: url, max: currentSite() ? MOST_OF_A_SITE : MOST_CONNECTIONS };
  // A connection that breaks while nobody uses it is taken out of the pool; who asks next gets another.
  const factory = new PrismaPg(pool, { onPoolError: () => undefined });
  const connect = factory.connect.bind(factory);
  factory.connect = async () => {
    const adapter = await connect();
    const begin = adapter.startTransaction.bind(adapter);
    adapter.startTransaction = async (level) => oneByOne(withoutZeros(await begin(level)));
    return withoutZeros(adapter);
  };
  return factory;
}

function withoutZeros<T extends Asks>(asks: T): T {
  const [query, execute] = [asks.queryRaw.bind(asks), asks.executeRaw.bind(asks)];
  asks.queryRaw = (asked) => query({ ...asked, args: asked.args.map(withoutZero) });
  asks.executeRaw = (asked) => execute({ ...asked, args: asked.args.map(withoutZero) });
  return asks;
}

/** A transaction has one connection, which takes one question at a time. */
function oneByOne<T extends Asks>(asks: T): T {
  const [query, execute] = [asks.queryRaw.bind(asks), asks.executeRaw.bind(asks)];
  let last: Promise<unknown> = Promise.resolve();
  const inLine = (ask: () => Promise<unknown>): Promise<unknown> => {
    const mine = last.then(ask, ask);
    last = mine.catch(() => undefined);
    return mine;
  };
  asks.queryRaw = (asked) => inLine(() => query(asked));
  asks.executeRaw = (asked) => inLine(() => execute(asked));
  return asks;
}

const withoutZero = (value: unknown): unknown =>
  typeof value === "string" && value.includes("\0") ? value.replaceAll("\0", "\uFFFD") : value;
