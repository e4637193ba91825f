package money_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/money"
)

func euro(minor int64) money.Amount { return money.Amount{Minor: minor, Currency: "EUR"} }

func TestPlus(t *testing.T) {
	none := money.Amount{}
	for _, c := range []struct{ a, b, want money.Amount }{
		{euro(2490), euro(510), euro(3000)},
		{euro(2490), euro(-2490), euro(0)},
		{none, euro(5), euro(5)},
		{euro(5), none, euro(5)},
		{none, none, none},
	} {
		if got, err := c.a.Plus(c.b); err != nil || got != c.want {
			t.Errorf("%v plus %v = %v, %v; want %v", c.a, c.b, got, err, c.want)
		}
	}
}

func TestPlusRefusesMixedCurrencies(t *testing.T) {
	_, err := euro(1).Plus(money.Amount{Minor: 1, Currency: "GBP"})
	var mixed *money.MixedError
	if !errors.As(err, &mixed) || mixed.Have != "EUR" || mixed.Other != "GBP" {
		t.Errorf("EUR plus GBP: %v", err)
	}
}

func TestNothingOverflowsSilently(t *testing.T) {
	_, plus := euro(math.MaxInt64).Plus(euro(1))
	_, minus := euro(math.MinInt64).Plus(euro(-1))
	_, times := euro(math.MaxInt64 / 2).Times(3)
	_, least := euro(-1).Times(math.MinInt64)
	_, share := euro(math.MaxInt64).Share(101*money.Percent, money.HalfToEven)
	for name, err := range map[string]error{"plus": plus, "minus": minus, "times": times, "least": least, "share": share} {
		if !errors.Is(err, money.ErrTooLarge) {
			t.Errorf("%s: %v, want ErrTooLarge", name, err)
		}
	}
}

func TestTimesIsRepeatedPlus(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := euro(rapid.Int64Range(-1e9, 1e9).Draw(t, "minor"))
		n := rapid.IntRange(0, 30).Draw(t, "n")
		sum := euro(0)
		for range n {
			sum, _ = sum.Plus(a)
		}
		if got, err := a.Times(int64(n)); err != nil || got != sum {
			t.Fatalf("%v times %d = %v, %v; want %v", a, n, got, err, sum)
		}
	})
}

func ExampleAmount_Times() {
	roll, _ := money.ParseAmount("34.00 EUR")
	rolls, _ := roll.Times(7)
	fmt.Println(rolls)
	// Output: 238.00 EUR
}
