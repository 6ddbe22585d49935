import type { EyeLevel, EyeLook } from "@/lib/eye";

export const levelNames: Readonly<Record<EyeLevel, string>> = {
  "iso-5817-b": "ISO 5817, level B",
  "iso-5817-c": "ISO 5817, level C",
  "iso-5817-d": "ISO 5817, level D",
};

export const lookNames: Readonly<Record<EyeLook, string>> = {
  plain: "Brushed and well lit",
  street: "Met anywhere: dirt, shadows, look-alikes",
};
