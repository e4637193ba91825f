import type { solid as british } from "../en-GB/solid";
import type { Message } from "../text";

export const solid: Record<keyof typeof british, Message> = {
  "solid.open": "Voir la pièce",
  "solid.title": "La pièce tapissée",
  "solid.coming": "Mise en place de la pièce …",
  "solid.away": "Cette partie n’a pas encore été chargée, et il n’y a pas de réseau.",
  "solid.refused": "Cet appareil ne peut pas dessiner en trois dimensions. Les murs en mots sont ci-dessous.",
  "solid.picture": "La pièce tapissée, à tourner et à parcourir",
  "solid.help": "Les flèches tournent la pièce ; à l’intérieur, elles vous tournent et vous font avancer et reculer. Plus et moins rapprochent et éloignent. Les touches de page regardent vers le haut et le bas.",
  "solid.above": "D’en haut",
  "solid.door": "Depuis la porte",
  "solid.seams": "Marquer les joints",
  "solid.left": "Tourner à gauche",
  "solid.right": "Tourner à droite",
  "solid.closer": "Plus près",
  "solid.further": "Plus loin",
  "solid.words": "La pièce en mots",
  "solid.wall": "Lés {drops}.",
};
