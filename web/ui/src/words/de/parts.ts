import type { parts as british } from "../en-GB/parts";
import type { Message } from "../text";

export const parts: Record<keyof typeof british, Message> = {
  "close": "Schließen",
  "cancel": "Abbrechen",
  "done": "Fertig",
  "again": "Noch einmal",
  "delete": "Löschen",
  "how": "Wie messen",

  "unit.mm": "mm",
  "unit.cm": "cm",
  "unit.m": "m",
  "unit.in": "in",
  "unit.ft": "ft",
  "unit.yd": "yd",

  "band.title": "{run}: die Wände abgewickelt",
  "band.help": "Pfeiltasten blicken die Wände entlang, Plus und Minus gehen näher heran und zurück, 0 zeigt alles. Mit Tab erreichen Sie Wände, Öffnungen, Bahnen und Marken.",
  "band.closer": "Näher",
  "band.further": "Weiter weg",
  "band.whole": "Ganzer Raum",
  "band.left": "Nach links",
  "band.right": "Nach rechts",
  "band.wall": "Wand {name}, {sizes}",
  "band.finding": "Marke {n}: {text}",
  "band.start": "Anfangslinie: {text}",
  "band.kill": "Schlussnaht: {text}",
  "band.plumb": "Lotlinie: {text}",
  "band.empty": "Noch keine Wände.",
  "room.run": "Wände im Blick",
  "floor.title": "Der Boden von oben",
  "floor.wall": "Wand {name} ansehen, {width}",
  "floor.here": "Wand {name}, {width}: Sie blicken auf sie",
};
