import { L_PER_CUBIC_FOOT, L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH } from "@/lib/base";

export { L_PER_CUBIC_FOOT, L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH };
export const MM_PER_FOOT = 12 * MM_PER_INCH;

/** Millimetres per unit of length, by every name people write. Lower case; µ and quotes are tidied before look-up. */
export const lengthNames: Readonly<Record<string, number>> = {
  mm: 1,
  millimetre: 1,
  millimetres: 1,
  millimeter: 1,
  millimeters: 1,
  cm: 10,
  centimetre: 10,
  centimetres: 10,
  centimeter: 10,
  centimeters: 10,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  "''": MM_PER_INCH,
  ft: MM_PER_FOOT,
  foot: MM_PER_FOOT,
  feet: MM_PER_FOOT,
  "'": MM_PER_FOOT,
  thou: MM_PER_INCH / 1000,
};

/** Seconds per unit of time. */
export const timeNames: Readonly<Record<string, number>> = {
  s: 1,
  sec: 1,
  secs: 1,
  second: 1,
  seconds: 1,
  min: 60,
  mins: 60,
  minute: 60,
  minutes: 60,
  h: 3600,
  hr: 3600,
  hour: 3600,
  hours: 3600,
};

/** Litres per unit of volume, for gas flow. */
export const volumeNames: Readonly<Record<string, number>> = {
  l: 1,
  litre: 1,
  litres: 1,
  liter: 1,
  liters: 1,
  m3: 1000,
  ft3: L_PER_CUBIC_FOOT,
  "cu ft": L_PER_CUBIC_FOOT,
};
