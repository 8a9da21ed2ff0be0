package org.axlecause.casefile;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.axlecause.access.Site;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PriceList;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Matter;
import org.axlecause.shared.Sha256;
import org.jspecify.annotations.Nullable;

/**
 * What a judgement rests on beside the entries of the case, in a line: the program, the rulebook, policy, weights, prices and
 * site, each by its version, and how many entries there were. Two judgements of a case with the same line are the same.
 */
final class JudgedOf {

    private static final int DIGITS = 12;
    private static final String NONE = "-";
    private static final String PROGRAM = program();

    private JudgedOf() {}

    /** The line of a judgement; null where the day of the limits or the site is not the case's own. */
    static @Nullable String of(Matter matter, @Nullable Site site, String rulebook) {
        if (site == null || matter.asOf() != null) {
            return null;
        }
        Policy policy = matter.policy();
        PriceList prices = matter.priceList();
        Integer weights = matter.weights().version();
        return String.join(
                " ",
                PROGRAM,
                rulebook,
                policy.name(),
                String.valueOf(policy.version()),
                weights == null ? NONE : String.valueOf(weights),
                prices == null ? NONE : String.valueOf(prices.version()),
                site.site(),
                String.valueOf(site.version()),
                String.valueOf(matter.history().entries().size()));
    }

    /** A hash over what the judge's classes came from; a word that no other process has where that can't be read. */
    private static String program() {
        CodeSource source = Judge.class.getProtectionDomain().getCodeSource();
        try {
            return source == null
                    ? UUID.randomUUID().toString()
                    : hash(Path.of(source.getLocation().toURI()));
        } catch (URISyntaxException | IllegalArgumentException elsewhere) {
            return UUID.randomUUID().toString();
        }
    }

    /** A hash over a file, or over all classes of a folder in the order of their names. */
    static String hash(Path archiveOrFolder) {
        try (Stream<Path> found = Files.walk(archiveOrFolder)) {
            List<Path> files = found.filter(Files::isRegularFile)
                    .filter(file ->
                            file.equals(archiveOrFolder) || file.toString().endsWith(".class"))
                    .sorted()
                    .toList();
            MessageDigest digest = Sha256.begun();
            for (Path file : files) {
                digest.update(archiveOrFolder.relativize(file).toString().getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
                digest.update(Files.readAllBytes(file));
            }
            return HexFormat.of().formatHex(digest.digest()).substring(0, DIGITS);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
