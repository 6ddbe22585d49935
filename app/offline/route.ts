export const dynamic = "force-static";

/**
 * Shown where a page is not on this device and Toeline does not answer. It knows nobody and nothing of the record. Its
 * address is that of the page asked for, so loading it again is asking again: no script is needed for that.
 */
export function GET(): Response {
  return new Response(html, { headers: { "content-type": "text/html; charset=utf-8" } });
}

const html = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="refresh" content="10">
<title>Without network · Toeline</title>
<style>
  body { margin: 0; font: 18px/1.5 system-ui, sans-serif; color: #14171c; background: #fff; }
  a, header { font-weight: 600; }
  header { background: #14171c; color: #fff; padding: 12px 20px; font-size: 22px; }
  header + div { height: 6px; background: linear-gradient(90deg, #e8b83a 0 25%, #96541a 25% 50%, #6b2f74 50% 75%, #1f5aa6 75%); }
  main { max-width: 640px; margin: 0 auto; padding: 20px; }
  li { margin: 8px 0; }
  a { display: inline-block; margin: 8px 12px 8px 0; padding: 14px 18px; border: 2px solid #14171c; border-radius: 6px; color: inherit; }
  @media (prefers-color-scheme: dark) { body { color: #f1eee6; background: #15181d; } a { border-color: #f1eee6; } }
</style>
</head>
<body>
<header>Toeline</header><div></div>
<main>
<h1>This page needs Toeline</h1>
<p>Toeline does not answer, and this page was not kept on this device. It is asked again every ten seconds.</p>
<p>What works here without it:</p>
<ul>
<li>a new bead: photo, marks, set-up, sizes, causes, verdict</li>
<li>beads that were opened on this device before</li>
</ul>
<p>What does not: signing in, signing a record, sheets and PDFs, handing in, lists and trends as they are now. What you do on a bead is kept and goes to Toeline by itself.</p>
<p><a href="/beads/new">New bead</a><a href="/">All beads</a></p>
</main>
</body>
</html>
`;
