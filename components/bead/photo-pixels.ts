/** The pixels of a picture, from the server or from this device. Throws when it cannot be loaded. */
export async function photoPixels(url: string): Promise<ImageData> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error("the photo could not be loaded");
  const bitmap = await createImageBitmap(await answer.blob());
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) throw new Error("this browser gives no pixels");
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  return context.getImageData(0, 0, canvas.width, canvas.height);
}
