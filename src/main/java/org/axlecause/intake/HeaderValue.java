package org.axlecause.intake;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Undoes the encoding of attribute values in HTTP headers: first quotes, then one round of percent-decoding. */
final class HeaderValue {

    private static final int HEX_RADIX = 16;

    private HeaderValue() {}

    /** The value; empty where its bytes are no UTF-8 or a percent sign stands alone. */
    static Optional<String> decoded(String header) {
        String text = unquoted(header.strip());
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c != '%') {
                bytes.writeBytes(String.valueOf(c).getBytes(StandardCharsets.UTF_8));
                continue;
            }
            boolean whole = i + 2 < text.length();
            int high = whole ? Character.digit(text.charAt(i + 1), HEX_RADIX) : -1;
            int low = whole ? Character.digit(text.charAt(i + 2), HEX_RADIX) : -1;
            if (high < 0 || low < 0) {
                return Optional.empty();
            }
            bytes.write(high * HEX_RADIX + low);
            i += 2;
        }
        return utf8(bytes.toByteArray());
    }

    private static String unquoted(String text) {
        if (text.length() < 2 || !text.startsWith("\"") || !text.endsWith("\"")) {
            return text;
        }
        StringBuilder plain = new StringBuilder();
        for (int i = 1; i < text.length() - 1; i++) {
            char c = text.charAt(i);
            if (c == '\\' && i + 1 < text.length() - 1) {
                i++;
                plain.append(text.charAt(i));
            } else {
                plain.append(c);
            }
        }
        return plain.toString();
    }

    private static Optional<String> utf8(byte[] bytes) {
        try {
            return Optional.of(StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString());
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }
}
