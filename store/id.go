package store

// ID names a job, or a revision. It is made by whoever begins the job, without
// asking anybody, so that one can begin without a network: a UUID in small
// letters, such as "01890a5d-ac96-774b-bcce-b302099a8057". Version 7 of RFC 9562,
// which begins with the time, keeps those that belong together near each other;
// the form alone is checked.
type ID string

// idForm is the form of a UUID: x stands for a hexadecimal digit.
const idForm = "xxxxxxxx-xxxx-xxxx-xxxx-xxxxxxxxxxxx"

// ParseID reads an id. Whatever has another form is [Invalid].
func ParseID(text string) (ID, error) {
	if len(text) != len(idForm) {
		return "", errID
	}
	for i := range len(idForm) {
		c := text[i]
		isDigit := c >= '0' && c <= '9' || c >= 'a' && c <= 'f'
		if idForm[i] == 'x' && !isDigit || idForm[i] == '-' && c != '-' {
			return "", errID
		}
	}
	return ID(text), nil
}

var errID = &Error{Code: Invalid, Message: "an id is a UUID in small letters, such as 01890a5d-ac96-774b-bcce-b302099a8057"}
