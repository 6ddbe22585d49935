/**
 * Lets the worker keep the pictures that the server made of a photo: a photo that was sent from here was shown from here
 * until now, so nobody has asked for them. Does nothing where no worker runs.
 */
export async function keepPictures(sha256: string): Promise<void> {
  if (!navigator.serviceWorker?.controller) return;
  const sizes = ["thumb", "small", "view"];
  await Promise.allSettled(sizes.map((size) => fetch(`/api/photos/${sha256}/${size}`)));
}
