package org.axlecause.casefile;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;

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
                List.of(
                        new CauseRow(
                                "hub-seal-leaking",
                                Place.ofWheel(2, Side.RIGHT),
                                "confirmed",
                                new BigDecimal("0.98"),
                                true),
                        new CauseRow("drum-oval", Place.ofWheel(2, Side.RIGHT), "ruled-out", null, false)),
                List.of(new ScopeLineRow(
                        "renew-shoe-set-axle-2",
                        "renew",
                        "shoe-set",
                        Place.ofAxle(2),
                        "axle",
                        BigDecimal.ONE,
                        "required",
                        "proposed",
                        null,
                        new BigDecimal("44.10"),
                        "GBP")));
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
