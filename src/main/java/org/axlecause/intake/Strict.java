package org.axlecause.intake;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;

/** Reads bytes as the one JSON document that they must be: UTF-8, no key twice, not too deep, nothing behind it. */
final class Strict {

    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private static final ObjectReader READER =
            Json.mapper().reader().without(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    private Strict() {}

    static JsonNode json(byte[] body) {
        String text = text(body);
        if (text.isBlank()) {
            throw malformed("", "The body is empty; a JSON document is expected. Send the event as JSON.");
        }
        try (JsonParser parser = Json.mapper().createParser(text)) {
            try {
                JsonNode document = READER.readTree(parser);
                if (parser.nextToken() != null) {
                    throw malformed(
                            "", "There is more behind the JSON document; one document is expected. Send one only.");
                }
                return document;
            } catch (JsonProcessingException e) {
                throw malformed(parser.getParsingContext().pathAsPointer().toString(), words(e));
            } catch (NumberFormatException e) {
                throw malformed(
                        parser.getParsingContext().pathAsPointer().toString(),
                        "The number has an exponent that no computer holds: " + e.getMessage() + ". Correct it.");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(byte[] body) {
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(body))
                    .toString();
            return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw malformed("", "The body is not UTF-8; JSON in UTF-8 is expected. Send it in that encoding.");
        }
    }

    private static String words(JsonProcessingException fault) {
        String place = fault.getLocation() == null
                ? ""
                : " at line " + fault.getLocation().getLineNr() + ", column "
                        + fault.getLocation().getColumnNr();
        return "The JSON can't be read" + place + ": " + fault.getOriginalMessage()
                + ". Expected is JSON by RFC 8259, each member once, nested at most " + Json.MAX_DEPTH
                + " deep, numbers of at most 64 characters. Correct it.";
    }

    private static RefusedException malformed(String pointer, String text) {
        return RefusedException.malformed("The body can't be read as JSON.", List.of(new Problem.Cause(pointer, text)));
    }
}
