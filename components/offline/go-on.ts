import type { Saved, Saver } from "@/components/saving";
import { mergeContent, type BeadContent } from "@/lib/assess";
import type { BeadKeeper } from "./bead-keeper";
import type { ScreenNews } from "./kept-saving";

/**
 * The screen goes on with what was found on this device. What was done on it before that was known is kept beside it: all
 * marks of both.
 */
export function goOn(
  { held, content, photos }: NonNullable<Awaited<ReturnType<BeadKeeper["open"]>>>,
  saver: Saver<BeadContent, Saved>,
  news: Pick<ScreenNews, "onTakenUp">,
): void {
  const screen = saver.held();
  saver.resume(held);
  if (!screen.isSent) saver.touch();
  news.onTakenUp(screen.isSent ? content : mergeContent(screen.content, content), photos);
}
