package org.axlecause.casefile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.shared.Json;
import org.axlecause.shared.Sha256;

/**
 * What a case document says, in short: enough to tell which members of the next one differ.
 *
 * @param verified whether the repair is proven in it
 * @param members the first hexadecimal digits of the SHA-256 of each member that says something, by name
 */
record DocumentDigest(boolean verified, Map<String, String> members) {

    /** The digest of a case that was never judged. */
    static final DocumentDigest NONE = new DocumentDigest(false, Map.of());

    /** They name the case and count its events; that they move says nothing. */
    private static final Set<String> LABELS = Set.of("reference", "version");

    /** An empty list says as little as none. */
    private static final Set<String> EMPTY = Set.of("[]", "{}");

    private static final String VERIFIED = "verified";
    private static final int DIGITS = 16;

    DocumentDigest {
        members = Map.copyOf(members);
    }

    /** The digest of a document, of which each member is given as it is written. */
    static DocumentDigest of(Map<String, String> document) {
        Map<String, String> members = new TreeMap<>();
        document.forEach((name, member) -> {
            if (!LABELS.contains(name) && !EMPTY.contains(member)) {
                members.put(name, Sha256.of(member).substring(0, DIGITS));
            }
        });
        String outcome = Json.read(document.getOrDefault("verification", "{}"))
                .path("outcome")
                .asText();
        return new DocumentDigest(outcome.equals(VerificationOutcome.VERIFIED.toString()), members);
    }

    /** What {@link #text} wrote. */
    static DocumentDigest read(String text) {
        Map<String, String> members = new TreeMap<>();
        List<String> words = Arrays.asList(text.split(" "));
        words.stream()
                .filter(word -> word.contains("="))
                .map(word -> word.split("="))
                .forEach(member -> members.put(member[0], member[1]));
        return new DocumentDigest(words.contains(VERIFIED), members);
    }

    /** As it is kept: words between blanks, members in the order of their names. */
    String text() {
        List<String> words = new ArrayList<>();
        if (verified) {
            words.add(VERIFIED);
        }
        new TreeMap<>(members).forEach((name, digits) -> words.add(name + '=' + digits));
        return String.join(" ", words);
    }

    /** Names of the members in which the two differ, in their order. */
    List<String> differences(DocumentDigest other) {
        Set<String> names = new TreeSet<>(members.keySet());
        names.addAll(other.members.keySet());
        names.removeIf(name -> members.getOrDefault(name, "").equals(other.members.getOrDefault(name, "")));
        return List.copyOf(names);
    }
}
