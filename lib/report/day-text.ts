const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** "25 November 2026" from an ISO 8601 time; the date as the record holds it, in UTC. */
export function dayText(iso: string): string {
  const [year = "", month = "", day = ""] = iso.slice(0, 10).split("-");
  return `${Number(day)} ${months[Number(month) - 1] ?? month} ${year}`;
}
