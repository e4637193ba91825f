import type { cut as british } from "../en-GB/cut";
import type { Message } from "../text";

export const cut: Record<keyof typeof british, Message> = {};
