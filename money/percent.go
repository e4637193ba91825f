package money

import "math/big"

// Percentage is a share in hundredths of a per cent: 19 % is 1900, 7.7 % is
// 770. It may be negative (a rebate) and may exceed 100 %.
type Percentage int64

// Percent is one per cent, and PerCentOfPerCent its hundredth part, the finest
// share that a Percentage can tell apart.
const (
	PerCentOfPerCent Percentage = 1
	Percent                     = 100 * PerCentOfPerCent
)

// Rounding settles a share that falls between two whole minor units: floor is
// the one below (towards minus infinity), and half is −1, 0 or 1 as the rest is
// less than, exactly, or more than half a unit. It returns floor or floor + 1.
// A share that is whole already is never given to it.
type Rounding func(floor int64, half int) int64

// HalfAwayFromZero rounds to the nearest unit and an exact half to the larger
// magnitude: 0.5 to 1, −0.5 to −1. It is what most invoices use.
func HalfAwayFromZero(floor int64, half int) int64 {
	if half > 0 || half == 0 && floor >= 0 {
		return floor + 1
	}
	return floor
}

// HalfToEven rounds to the nearest unit and an exact half to the even one, so
// that many roundings do not add up to a bias.
func HalfToEven(floor int64, half int) int64 {
	if half > 0 || half == 0 && floor%2 != 0 {
		return floor + 1
	}
	return floor
}

// TowardsZero drops the rest.
func TowardsZero(floor int64, _ int) int64 {
	if floor < 0 {
		return floor + 1
	}
	return floor
}

// Share returns that share of the amount, rounded once by the named rule, or
// [ErrTooLarge]. Of what is not stated, every share is not stated.
func (a Amount) Share(p Percentage, round Rounding) (Amount, error) {
	whole := big.NewInt(int64(100 * Percent))
	product := new(big.Int).Mul(big.NewInt(a.Minor), big.NewInt(int64(p)))
	floor, rest := new(big.Int).DivMod(product, whole, new(big.Int))
	if !floor.IsInt64() || floor.Int64()+1 < floor.Int64() {
		return Amount{}, ErrTooLarge
	}
	if rest.Sign() == 0 {
		return Amount{floor.Int64(), a.Currency}, nil
	}
	half := rest.Lsh(rest, 1).Cmp(whole)
	return Amount{round(floor.Int64(), half), a.Currency}, nil
}
