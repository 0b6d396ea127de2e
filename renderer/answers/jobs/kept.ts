/** What was last made from plain data, kept by content; beyond `most`, what was longest not asked for goes. */
export class Kept<In, Out> {
  private readonly known = new Map<string, Out>();

  constructor(
    private readonly most: number,
    private readonly make: (from: In) => Out,
  ) {}

  of(from: In): Out {
    const key = JSON.stringify(from);
    const found = this.known.get(key) ?? this.make(from);
    this.known.delete(key);
    this.known.set(key, found);
    if (this.known.size > this.most) this.known.delete(this.known.keys().next().value!);
    return found;
  }
}
