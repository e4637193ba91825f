// The server sends programs in filtered form, which compresses better. web/wasm/slim/filter.go
// writes it, and says what it is. Here a program is put back, byte for byte.

const header = "filtered wasm 1\n";
/** The length up to which a program is believed. */
const longest = 256 << 20;

// Sections that are filtered, and instructions that are written (WebAssembly Core
// Specification 2.0, 5.4 and 5.5).
const elementSection = 9;
const codeSection = 10;
const dataSection = 11;
const i32Const = 0x41;
const i64Const = 0x42;
const firstFunction = 0x1000;

/** What follows the byte of an instruction. */
const enum Operand { Unknown, None, OneNumber, TwoNumbers, FourBytes, EightBytes, Opens, Closes, Branch, BranchTable, More, JumpPlace, ReturnPlace }

const operands = new Uint8Array(256);
for (const [from, to, what] of [
  [0x00, 0x01, Operand.None],
  [0x02, 0x04, Operand.Opens],
  [0x05, 0x05, Operand.None],
  [0x0b, 0x0b, Operand.Closes],
  [0x0c, 0x0d, Operand.Branch],
  [0x0e, 0x0e, Operand.BranchTable],
  [0x0f, 0x0f, Operand.None],
  [0x10, 0x10, Operand.OneNumber],
  [0x11, 0x11, Operand.TwoNumbers],
  [0x1a, 0x1b, Operand.None],
  [0x20, 0x24, Operand.OneNumber],
  [0x28, 0x3e, Operand.TwoNumbers],
  [0x3f, 0x42, Operand.OneNumber],
  [0x43, 0x43, Operand.FourBytes],
  [0x44, 0x44, Operand.EightBytes],
  [0x45, 0xc4, Operand.None],
  [0xfc, 0xfc, Operand.More],
  [0xfe, 0xfe, Operand.JumpPlace],
  [0xff, 0xff, Operand.ReturnPlace],
] as const) {
  operands.fill(what, from, to + 1);
}

/**
 * An answer with a program in filtered form, with the program put back; any other answer
 * as it is. The server says that filtered ones are bytes; WebAssembly has a type of its own.
 */
export async function unfiltered(response: Response): Promise<Response> {
  if (response.headers.get("Content-Type") === "application/wasm") return response;
  const program = unfilter(new Uint8Array(await response.arrayBuffer()));
  return new Response(program, { headers: { "Content-Type": "application/wasm" } });
}

/** Puts a program back. It throws for what is no program in filtered form, or not all of one. */
export function unfilter(filtered: Uint8Array): Uint8Array<ArrayBuffer> {
  return new Unfiltering(filtered).program();
}

class Unfiltering {
  readonly #from: Uint8Array;
  #at = 0;
  #program = new Uint8Array(0);
  #words = new DataView(this.#program.buffer);
  #to = 0; // beyond the end nothing is kept; that is found at the end of a section

  constructor(filtered: Uint8Array) {
    this.#from = filtered;
  }

  program(): Uint8Array<ArrayBuffer> {
    for (const c of header) if (this.#read() !== c.charCodeAt(0)) throw new Error("this is no program in filtered form");
    const length = this.#unsigned();
    if (length > longest) throw new Error(`a program of ${length} bytes is too long`);
    this.#program = new Uint8Array(length);
    this.#words = new DataView(this.#program.buffer);
    for (const byte of [0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]) this.#write(byte);
    while (this.#at < this.#from.length) this.#section();
    if (this.#to !== length) throw cut();
    return this.#program;
  }

  #section(): void {
    const section = this.#copyByte();
    const length = this.#count();
    const end = this.#to + length;
    if (section === elementSection) this.#elements();
    else if (section === codeSection) this.#code();
    else if (section === dataSection) this.#data(length);
    else this.#copy(length);
    if (this.#to !== end || end > this.#program.length) throw new Error(`section ${section} of the program has another length than it says`);
  }

  #elements(): void {
    for (let n = this.#count(); n > 0; n--) {
      this.#copy(2); // the kind, and i32.const
      this.#copyNumber();
      this.#copy(1); // end
      this.#distances(this.#count());
    }
  }

  #code(): void {
    const n = this.#count();
    for (let i = 0; i < n; i++) {
      const begin = this.#to;
      this.#function(firstFunction + i);
      // The length of a body stands before it, and is known after it.
      const length = this.#to - begin;
      const size = sizeOf(length);
      this.#program.copyWithin(begin + size, begin, begin + length);
      this.#to = begin;
      this.#writeUnsigned(length);
      this.#to = begin + size + length;
    }
  }

  /** What the memory begins with, and Go's list of functions in it. */
  #data(length: number): void {
    const at = this.#unsigned();
    const count = this.#unsigned();
    const list = this.#to + at;
    this.#copy(length);
    /** Where more is said of a function. */
    const more = (i: number) => list + this.#word(list + 8 * i + 4);
    for (let i = 1; i < count; i++) {
      this.#add(list + 8 * i, list + 8 * (i - 1));
      this.#add(more(i), more(i - 1));
    }
  }

  /** Adds two numbers of 32 bits to two others, each to its own. */
  #add(these: number, those: number): void {
    for (const at of [0, 4]) this.#words.setUint32(these + at, this.#word(these + at) + this.#word(those + at), true); // modulo 2^32
  }

  #word(at: number): number {
    if (at > this.#to - 4) throw wrong();
    return this.#words.getUint32(at, true);
  }

  /** A body: its locals, and its instructions to the end. */
  #function(number: number): void {
    for (let n = this.#count(); n > 0; n--) {
      this.#copyNumber();
      this.#copy(1);
    }
    let place = 0;
    for (let depth = 0; ; ) {
      const op = this.#read();
      const what = operands[op];
      if (what !== Operand.JumpPlace && what !== Operand.ReturnPlace) this.#write(op);
      switch (what) {
        case Operand.None:
          break;
        case Operand.TwoNumbers:
          this.#copyNumber();
          this.#copyNumber();
          break;
        case Operand.OneNumber:
          this.#copyNumber();
          break;
        case Operand.FourBytes:
          this.#copy(4);
          break;
        case Operand.EightBytes:
          this.#copy(8);
          break;
        case Operand.Opens:
          this.#copyNumber();
          depth++;
          break;
        case Operand.Closes:
          if (depth-- === 0) return;
          break;
        case Operand.Branch:
          this.#writeUnsigned(depth - this.#unsigned());
          break;
        case Operand.BranchTable:
          this.#distances(this.#count() + 1);
          break;
        case Operand.JumpPlace:
          this.#write(i32Const);
          this.#writeSigned(place + this.#signed());
          break;
        case Operand.ReturnPlace:
          place += this.#signed();
          this.#write(i64Const);
          this.#writeSigned(number * 0x10000 + place);
          break;
        case Operand.More:
          this.#more();
          break;
        default:
          throw new Error(`the program holds an instruction ${op} that is none`);
      }
    }
  }

  /** The rest of an instruction of two bytes. */
  #more(): void {
    const op = this.#copyByte();
    if (op === 10) this.#copy(2); // memory.copy
    else if (op === 11) this.#copy(1); // memory.fill
    else if (op > 7) throw new Error(`the program holds an instruction 0xfc ${op} that is none`);
  }

  /** Numbers that are written as distances, the first from 0. */
  #distances(n: number): void {
    for (let last = 0; n > 0; n--) this.#writeUnsigned((last += this.#signed()));
  }

  #read(): number {
    if (this.#at >= this.#from.length) throw cut();
    return this.#from[this.#at++]!;
  }

  #write(byte: number): void {
    this.#program[this.#to++] = byte;
  }

  #copy(n: number): void {
    if (n > this.#from.length - this.#at || n > this.#program.length - this.#to) throw cut();
    this.#program.set(this.#from.subarray(this.#at, this.#at + n), this.#to);
    this.#at += n;
    this.#to += n;
  }

  #copyByte(): number {
    const byte = this.#read();
    this.#write(byte);
    return byte;
  }

  #copyNumber(): void {
    while (this.#copyByte() >= 0x80);
  }

  /** Copies a number without a sign, and returns it. */
  #count(): number {
    const n = this.#unsigned();
    this.#writeUnsigned(n);
    return n;
  }

  /** Reads a number in LEB128 without a sign (5.2.2). */
  #unsigned(): number {
    let n = 0;
    for (let unit = 1; unit < longestUnit; unit *= 0x80) {
      const byte = this.#read();
      n += (byte & 0x7f) * unit;
      if (byte < 0x80) return n;
    }
    throw wrong();
  }

  /** Reads a number with a sign: the last byte's second bit stands for all above. */
  #signed(): number {
    let n = 0;
    for (let unit = 1; unit < longestUnit; unit *= 0x80) {
      const byte = this.#read();
      n += (byte & 0x7f) * unit;
      if (byte < 0x80) return byte < 0x40 ? n : n - unit * 0x80;
    }
    throw wrong();
  }

  #writeUnsigned(n: number): void {
    if (n < 0) throw wrong();
    for (; n > 0x7f; n = Math.floor(n / 0x80)) this.#write((n & 0x7f) | 0x80);
    this.#write(n);
  }

  #writeSigned(n: number): void {
    for (; n < -0x40 || n > 0x3f; n = Math.floor(n / 0x80)) this.#write((n & 0x7f) | 0x80);
    this.#write(n & 0x7f);
  }
}

/** Numbers end before this: no address of code is longer. */
const longestUnit = 2 ** 49;

/** How many bytes a number without a sign takes. */
function sizeOf(n: number): number {
  let size = 1;
  for (; n > 0x7f; n = Math.floor(n / 0x80)) size++;
  return size;
}

const cut = () => new Error("the program ends where more must follow, or goes on where it must end");
const wrong = () => new Error("the program holds a number that cannot be");
