// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

package main

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"strings"
)

// digits write 15 bits as two of 182, a byte each in the file: 16 letters for 15 bytes, where the usual way, of 64, takes 20.
// None of them ends a script, is a space or cannot be seen.
const digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789!#$%&()*+,-./:;=>?@[]^_`{|}~'" +
	"¤¥¦§¨©ª«¬®¯°±²³´µ¶·¸¹º»¼½¾¿ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖ×ØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõö÷øùúûüýþÿ"

// charset is what the file is written in: a byte is a letter, so that digits need no second one.
const charset = "windows-1252"

// bytesOf returns a page in that charset. Its letters from 160 to 255 are those of Unicode.
func bytesOf(html string) ([]byte, error) {
	file := make([]byte, 0, len(html))
	for _, r := range html {
		if r > 0xff || r >= 0x80 && r < 0xa0 {
			return nil, fmt.Errorf("%q cannot be written in %s", r, charset)
		}
		file = append(file, byte(r))
	}
	return file, nil
}

// pack returns bytes compressed and as text, and how many bytes that is of.
func pack(data []byte) (text string, size int, err error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return "", 0, err
	}
	if _, err := z.Write(data); err != nil {
		return "", 0, err
	}
	if err := z.Close(); err != nil {
		return "", 0, err
	}
	return encode(b.Bytes()), b.Len(), nil
}

func encode(data []byte) string {
	letters := []rune(digits)
	var text strings.Builder
	held, bits := 0, 0
	write := func() {
		n := held & (1<<15 - 1)
		text.WriteRune(letters[n%len(letters)])
		text.WriteRune(letters[n/len(letters)])
		held, bits = held>>15, bits-15
	}
	for _, b := range data {
		held |= int(b) << bits
		if bits += 8; bits >= 15 {
			write()
		}
	}
	if bits > 0 {
		write()
	}
	return text.String()
}
