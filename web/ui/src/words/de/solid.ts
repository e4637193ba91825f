import type { solid as british } from "../en-GB/solid";
import type { Message } from "../text";

export const solid: Record<keyof typeof british, Message> = {
  "solid.open": "Den Raum ansehen",
  "solid.title": "Der tapezierte Raum",
  "solid.coming": "Der Raum wird aufgebaut …",
  "solid.away": "Dieser Teil ist noch nicht geladen, und es gibt kein Netz.",
  "solid.refused": "Dieses Gerät kann nicht räumlich zeichnen. Die Wände in Worten stehen darunter.",
  "solid.picture": "Der tapezierte Raum, zum Drehen und Begehen",
  "solid.help": "Pfeiltasten drehen den Raum; in ihm drehen sie Sie und gehen vor und zurück. Plus und Minus gehen näher heran und zurück. Bildtasten blicken auf und ab.",
  "solid.above": "Von oben",
  "solid.door": "Von der Tür",
  "solid.seams": "Nähte zeigen",
  "solid.left": "Nach links drehen",
  "solid.right": "Nach rechts drehen",
  "solid.closer": "Näher",
  "solid.further": "Weiter weg",
  "solid.words": "Der Raum in Worten",
  "solid.wall": "Bahnen {drops}.",
};
