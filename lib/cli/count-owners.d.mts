/** How many people may open accounts: in the database of a data folder, or in the PostgreSQL at `url`. */
export function countOwners(folder: string, url: string | null): Promise<number>;
