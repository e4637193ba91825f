package money

import (
	"errors"
	"fmt"
	"math"
)

// Amount is a sum of money: a whole number of the currency's smallest unit.
// 24.90 EUR has Minor 2490, 500 JPY has Minor 500. It may be negative (a
// credit). The zero value is "not stated": no amount in no currency.
type Amount struct {
	Minor    int64
	Currency Currency
}

// ErrTooLarge says that a sum or product has no room in an Amount.
var ErrTooLarge = errors.New("the amount is too large")

// MixedError says that amounts of two currencies were to be added.
type MixedError struct{ Have, Other Currency }

// Error names both currencies.
func (e *MixedError) Error() string {
	return fmt.Sprintf("%s and %s cannot be added; convert one of them first", e.Have, e.Other)
}

// IsStated reports whether there is an amount at all: 0.00 EUR is stated, the
// zero value is not.
func (a Amount) IsStated() bool { return a.Currency != "" }

// Plus returns the sum. What is not stated adds nothing, whatever the other's
// currency; two different currencies are refused with a *[MixedError].
func (a Amount) Plus(other Amount) (Amount, error) {
	switch {
	case !other.IsStated():
		return a, nil
	case !a.IsStated():
		return other, nil
	case a.Currency != other.Currency:
		return Amount{}, &MixedError{a.Currency, other.Currency}
	}
	sum := a.Minor + other.Minor
	if (sum > a.Minor) != (other.Minor > 0) {
		return Amount{}, ErrTooLarge
	}
	return Amount{sum, a.Currency}, nil
}

// Times returns the amount for n pieces: exact, or [ErrTooLarge]. n may be 0
// or negative.
func (a Amount) Times(n int64) (Amount, error) {
	product := a.Minor * n
	if a.Minor != 0 && (product/a.Minor != n || a.Minor == -1 && n == math.MinInt64) {
		return Amount{}, ErrTooLarge
	}
	return Amount{product, a.Currency}, nil
}
