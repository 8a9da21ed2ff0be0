package org.axlecause.casefile;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.Set;
import java.util.UUID;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.EntryId;

/** Situations of the case file, for its tests. */
final class Cases {

    static final OffsetDateTime NOON = OffsetDateTime.parse("2026-03-02T12:00:00Z");

    private Cases() {}

    /** A tenant that no other test uses. */
    static String aTenant() {
        return "t-" + UUID.randomUUID().toString().substring(0, 13);
    }

    static NewEvent anEvent(String id, String time) {
        return anEvent(id, time, "{\"id\":\"" + id + "\"}");
    }

    static NewEvent anEvent(String id, String time, String body) {
        return new NewEvent(
                new EntryId("/sites/quay-street", id),
                "org.axlecause.finding.recorded.v1",
                OffsetDateTime.parse(time),
                NOON,
                "open",
                body,
                sha256(body));
    }

    static JudgedCase aJudgedCase(String site, String status, OffsetDateTime opened, String model) {
        return new JudgedCase(
                new CaseColumns(site, status, opened, opened.toLocalDate(), 3, "Corvane", model),
                "{\"z\":1, \"a\":2}",
                "baseline 1",
                "rules-1",
                Set.of(CauseCode.HUB_SEAL_LEAKING));
    }

    static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
