/**
 * Decimal numbers with a fixed point, thirty places behind it, on whole numbers of any size. Just what the rounding
 * of a printed standard wants: sums, products and quotients that are exact on paper are exact here. The tests hold
 * it against a general decimal library.
 */

const PLACES = 30;
const ONE = 10n ** BigInt(PLACES);

export class Decimal {
  private readonly scaled: bigint;
  private constructor(scaled: bigint) {
    this.scaled = scaled;
  }

  /** From a number as it prints ("0.1" is one tenth), or from decimal text; digits behind the thirtieth place are cut off. */
  static of(value: number | string): Decimal {
    const [mantissa = "0", exponent = "0"] = String(value).toLowerCase().split("e");
    const sign = mantissa.startsWith("-") ? -1n : 1n;
    const [whole = "0", part = ""] = mantissa.replace(/^[+-]/, "").split(".");
    const shift = PLACES + Number(exponent) - part.length;
    const digits = BigInt(`${whole}${part}` || "0");
    return new Decimal(sign * (shift >= 0 ? digits * 10n ** BigInt(shift) : digits / 10n ** BigInt(-shift)));
  }

  plus(other: Decimal): Decimal {
    return new Decimal(this.scaled + other.scaled);
  }
  minus(other: Decimal): Decimal {
    return new Decimal(this.scaled - other.scaled);
  }
  times(other: Decimal | number | string): Decimal {
    return new Decimal((this.scaled * decimal(other).scaled) / ONE);
  }
  div(other: Decimal | number | string): Decimal {
    return new Decimal((this.scaled * ONE) / decimal(other).scaled);
  }
  lesser(other: Decimal): Decimal {
    return other.scaled < this.scaled ? other : this;
  }
  greater(other: Decimal): Decimal {
    return other.scaled > this.scaled ? other : this;
  }

  /** Square root of a positive number: the binary one and one Newton step, which doubles its digits. */
  sqrt(): Decimal {
    const y = Decimal.of(Math.sqrt(this.toNumber()));
    return y.minus(y.times(y).minus(this).div(y.times(2)));
  }
  /** Cube root of a positive number, in the same way. */
  cbrt(): Decimal {
    const y = Decimal.of(Math.cbrt(this.toNumber()));
    const y2 = y.times(y);
    return y.minus(y2.times(y).minus(this).div(y2.times(3)));
  }

  /** A positive number in whole units of its nth place, half up; twenty places first, so that a tie on paper is a tie here. */
  inPlaces(n: number): number {
    const half = (unit: bigint, value: bigint) => (value + unit / 2n) / unit;
    const twenty = half(10n ** BigInt(PLACES - 20), this.scaled);
    return Number(half(10n ** BigInt(20 - n), twenty));
  }

  toNumber(): number {
    const text = this.scaled
      .toString()
      .replace("-", "")
      .padStart(PLACES + 1, "0");
    return Number(`${this.scaled < 0n ? "-" : ""}${text.slice(0, -PLACES)}.${text.slice(-PLACES)}`);
  }
}

const decimal = (value: Decimal | number | string) => (value instanceof Decimal ? value : Decimal.of(value));
