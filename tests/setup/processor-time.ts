/** What `work` costs this process, all its threads together, in milliseconds of processor: the same on a busy machine as on a quiet one. */
export async function processorMs(work: () => unknown): Promise<number> {
  const from = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}
