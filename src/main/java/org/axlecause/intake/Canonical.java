package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import org.axlecause.shared.Json;
import org.erdtman.jcs.JsonCanonicalizer;

/** The content of an event in canonical JSON (RFC 8785) and its digest, by which a repetition is known. */
public final class Canonical {

    private Canonical() {}

    /** SHA-256 over type, subject, time as an instant, and data; personal data must be replaced before. */
    static String digest(IncomingEvent event, JsonNode data) {
        return sha256(content(event.type().toString(), event.subject(), event.time(), data));
    }

    /** The content that the digest is of: type, subject, time as an instant, and data without personal data. */
    public static String content(String type, String subject, OffsetDateTime time, JsonNode data) {
        ObjectNode content = Json.mapper().createObjectNode();
        content.put("type", type);
        content.put("subject", subject);
        content.put("time", time.toInstant().toString());
        content.set("data", data);
        return text(content);
    }

    static String text(JsonNode value) {
        try {
            return new JsonCanonicalizer(Json.text(value)).getEncodedString();
        } catch (IOException e) {
            throw new IllegalArgumentException("no canonical form", e);
        }
    }

    private static String sha256(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }
}
