import type { paper as british } from "../en-GB/paper";
import type { Message } from "../text";

export const paper: Record<keyof typeof british, Message> = {};
