package money

import (
	"strconv"
	"strings"

	"firstdrop/message"
)

// ParseAmount reads an amount with its currency before or after it:
// "24.90 EUR", "EUR 24.90", "24,9 EUR", "-3 EUR". There may be fewer decimals
// than the currency has, never more. Marks between thousands are refused, and
// so is a comma before exactly three digits, which might be one.
func ParseAmount(text string) (Amount, error) {
	fields := strings.Fields(text)
	if len(fields) != 2 {
		return Amount{}, message.New("no_price", "{text} is no price; write a number and a currency, such as 24.90 EUR", "text", strconv.Quote(text))
	}
	number, code := fields[0], Currency(fields[1])
	if fields[0][0] >= 'A' && fields[0][0] <= 'z' {
		number, code = fields[1], Currency(fields[0])
	}
	decimals, ok := code.Decimals()
	if !ok {
		return Amount{}, unknown(code)
	}
	minor, err := parseMinor(number, decimals)
	if err != nil {
		return Amount{}, message.New("no_price_in", "{text} is no price in {currency}: {why}", "text", strconv.Quote(text), "currency", code, "why", message.Of(err)).Because(err)
	}
	return Amount{minor, code}, nil
}

// unknown names a code that ISO 4217 does not have, and the likely cause.
func unknown(code Currency) error {
	if upper := Currency(strings.ToUpper(string(code))); upper != code {
		if _, ok := upper.Decimals(); ok {
			return message.New("currency_small", "{code} is no currency code; write {upper}", "code", strconv.Quote(string(code)), "upper", upper)
		}
	}
	return message.New("currency_unknown", "{code} is no currency code; ISO 4217 has three capitals, such as EUR, GBP or USD", "code", strconv.Quote(string(code)))
}

// parseMinor reads a decimal number as a whole count of units of 10^-decimals.
func parseMinor(number string, decimals int) (int64, error) {
	digits := strings.TrimPrefix(number, "-")
	mark := strings.IndexAny(digits, ".,")
	whole, part := digits, ""
	if mark >= 0 {
		whole, part = digits[:mark], digits[mark+1:]
	}
	switch {
	case !isDigits(whole) || mark >= 0 && !isDigits(part):
		return 0, message.New("price_number", "{number} is no plain number; write digits and at most one decimal point", "number", strconv.Quote(number))
	case mark >= 0 && digits[mark] == ',' && len(part) == 3:
		return 0, message.New("price_comma", "the comma in {number} may stand for thousands or for decimals; write a point for decimals and nothing for thousands", "number", strconv.Quote(number))
	case len(part) > decimals:
		return 0, message.New("price_decimals", "{number} has more than the currency's {most} decimals", "number", strconv.Quote(number), "most", decimals)
	}
	minor, err := strconv.ParseInt(whole+part+strings.Repeat("0", decimals-len(part)), 10, 64)
	if err != nil {
		return 0, message.New("amount_too_large", "the amount is too large").Because(ErrTooLarge)
	}
	if digits != number {
		minor = -minor
	}
	return minor, nil
}

func isDigits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// String prints the amount with all the currency's decimals: "24.90 EUR",
// "500 JPY"; nothing when it is not stated. [ParseAmount] reads it back, but for
// the most negative Amount of all.
func (a Amount) String() string {
	if !a.IsStated() {
		return ""
	}
	decimals, _ := a.Currency.Decimals()
	digits := strconv.FormatInt(a.Minor, 10)
	sign := ""
	if a.Minor < 0 {
		sign, digits = "-", digits[1:]
	}
	if short := decimals + 1 - len(digits); short > 0 {
		digits = strings.Repeat("0", short) + digits
	}
	if decimals > 0 {
		cut := len(digits) - decimals
		digits = digits[:cut] + "." + digits[cut:]
	}
	return sign + digits + " " + string(a.Currency)
}

// MarshalText writes the amount as [Amount.String] does.
func (a Amount) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads what [ParseAmount] reads; nothing is the zero value.
func (a *Amount) UnmarshalText(text []byte) (err error) {
	if len(text) == 0 {
		*a = Amount{}
		return nil
	}
	*a, err = ParseAmount(string(text))
	return err
}
