import type { parts as british } from "../en-GB/parts";
import type { Message } from "../text";

export const parts: Record<keyof typeof british, Message> = {
  "close": "Fermer",
  "cancel": "Annuler",
  "done": "Terminé",
  "again": "Réessayer",
  "delete": "Supprimer",
  "how": "Comment mesurer",

  "unit.mm": "mm",
  "unit.cm": "cm",
  "unit.m": "m",
  "unit.in": "in",
  "unit.ft": "ft",
  "unit.yd": "yd",

  "band.title": "{run} : les murs déroulés",
  "band.help": "Les flèches parcourent les murs, plus et moins rapprochent et éloignent, 0 montre tout. Tab mène aux murs, ouvertures, lés et repères.",
  "band.closer": "Plus près",
  "band.further": "Plus loin",
  "band.whole": "Toute la pièce",
  "band.left": "Vers la gauche",
  "band.right": "Vers la droite",
  "band.wall": "Mur {name}, {sizes}",
  "band.finding": "Repère {n} : {text}",
  "band.start": "Ligne de départ : {text}",
  "band.kill": "Joint final : {text}",
  "band.plumb": "Trait d’aplomb : {text}",
  "band.empty": "Pas encore de murs.",
  "room.run": "Murs en vue",
  "floor.title": "Le sol vu d’en haut",
  "floor.wall": "Regarder le mur {name}, {width}",
  "floor.here": "Mur {name}, {width} : vous le regardez",
};
