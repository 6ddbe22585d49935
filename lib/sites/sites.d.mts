/** A school or works of its own: its people, numbers, limits, keys and log lie in its place and in no other. */
export interface Site {
  /** As the commands know it, and as its folder is called. */
  readonly name: string;
  /** By which names it is reached: small letters, without port. */
  readonly hosts: readonly string[];
  /** Its address where a proxy stands in front, as "https://north.works.example"; null: none does. */
  readonly origin: string | null;
  /** Its data folder: the keys, and where nothing else is named the database and the photos. */
  readonly folder: string;
  /** "file:…" or "postgresql://…". */
  readonly database: string;
  /** The folder that its backups lie in: an owner of one site names no other on this machine. */
  readonly backups: string;
  /** "s3://BUCKET/PREFIX", or its data folder. */
  readonly photos: string;
}
/** Where sites lie: the folders of all, and where there are, database and bucket with "{site}" in them. */
export interface Around {
  readonly data: string;
  readonly backups: string;
  readonly database: string | null;
  readonly photos: string | null;
}
type Env = Readonly<Record<string, string | undefined>>;
export class SitesError extends Error {}
export function isManySites(env?: Env): boolean;
export function patterns(env: Env): { readonly database: string | null; readonly photos: string | null };
export function readSites(text: string, around: Around): readonly Site[];
export function loadSites(env?: Env, root?: string): readonly Site[];
export function envOfSite(site: Site): Readonly<Record<string, string>>;
