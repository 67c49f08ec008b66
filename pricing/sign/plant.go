package sign

import (
	"crypto/ed25519"
	"encoding/base64"

	"boxwright/config"
)

// plantDomain keeps a signature under a catalogue from being taken for one under a quote.
const plantDomain = "boxwright catalogue signature 1\n"

// ofCatalogue is what a plant signs: the content of the edition and who may sign quotes.
func ofCatalogue(cat *config.Catalogue) []byte {
	return []byte(plantDomain + cat.Hash() + "\n" + cat.RosterHash() + "\n")
}

// Catalogue is the plant's signature under a catalogue that was read.
func (k *Key) Catalogue(cat *config.Catalogue) *config.PlantSignature {
	return &config.PlantSignature{Key: Text(k.Public()),
		Signature: base64.RawURLEncoding.EncodeToString(ed25519.Sign(k.private, ofCatalogue(cat)))}
}

// CheckCatalogue says what is wrong with the plant's signature under a catalogue; nil when
// it holds, and when there is none.
func CheckCatalogue(cat *config.Catalogue) config.Problems {
	s := cat.Signed
	if s == nil {
		return nil
	}
	public, _ := base64.RawURLEncoding.Strict().DecodeString(s.Key)
	signature, err := base64.RawURLEncoding.Strict().DecodeString(s.Signature)
	if err == nil && len(public) == KeyBytes && !weak(public) && ed25519.Verify(public, ofCatalogue(cat), signature) {
		return nil
	}
	return config.Problems{{Code: "catalogue.signature", Where: "signed",
		Text: "the plant's signature does not hold: " +
			"the catalogue was changed since it was signed. Ask the plant for it anew"}}
}

// OfPlant says why a catalogue is not one that a plant signed; nil when it is. An empty key
// takes any catalogue.
func OfPlant(cat *config.Catalogue, plant string) config.Problems {
	if plant == "" || cat.Signed != nil && cat.Signed.Key == plant && CheckCatalogue(cat) == nil {
		return nil
	}
	return config.Problems{{Code: "catalogue.plant", Where: "signed", Text: "this page takes catalogues of one plant " +
		"alone, and the plant did not sign this one"}}
}
