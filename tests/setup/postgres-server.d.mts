export interface PostgresServer {
  /** The URL of one of its databases. */
  url(database: string): string;
  create(database: string, template?: string): Promise<void>;
  stop(): Promise<void>;
}
/** A real PostgreSQL on a port of its own, gone with `stop`. */
export function startPostgres(): Promise<PostgresServer>;
