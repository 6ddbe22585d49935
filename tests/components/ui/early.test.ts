import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { takeUp } from "@/components/ui/early";

/** A page of one button that was pressed before anything listened, as far as taking it up asks of a page. */
function pressedPage(eventPhase: number, pressedAs = "Save", saysNow = "Save") {
  const click = vi.fn<() => void>();
  const event = { eventPhase };
  const button = { isConnected: true, textContent: saysNow, click, closest: () => null };
  const page = { contains: () => true, removeAttribute: () => undefined };
  vi.stubGlobal("document", { documentElement: page });
  vi.stubGlobal("__early", {
    done: new Map([[button, { said: pressedAs, event }]]),
    here: false,
  });
  return {
    click,
    take: () => takeUp(page as unknown as Element),
    end: () => Object.assign(event, { eventPhase: Event.NONE }),
  };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("Event", { NONE: 0, BUBBLING_PHASE: 3 });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("a press made before a page's code was here", () => {
  it("is made once when it is", () => {
    const { click, take } = pressedPage(Event.NONE);
    take();
    take();
    vi.runAllTimers();
    expect(click).toHaveBeenCalledTimes(1);
  });

  it("is React's own while it is under way, though it has ended a turn later", () => {
    const { click, take, end } = pressedPage(Event.BUBBLING_PHASE);
    take();
    end();
    vi.runAllTimers();
    expect(click).not.toHaveBeenCalled();
  });

  it("is not made when the button says something else by then", () => {
    const { click, take } = pressedPage(Event.NONE, "Play", "Stop");
    take();
    vi.runAllTimers();
    expect(click).not.toHaveBeenCalled();
  });
});
