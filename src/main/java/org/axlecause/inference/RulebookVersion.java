package org.axlecause.inference;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.SortedMap;
import org.axlecause.shared.YamlFile;

/** Version of the rulebook: a hash over every file in the rules folder, so that any change of rule or value shows. */
final class RulebookVersion {

    private static final int DIGITS = 12;

    private RulebookVersion() {}

    static String ofClassPath() {
        return of(YamlFile.textsInRules("", ""));
    }

    static String of(SortedMap<String, String> files) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            files.forEach((name, text) -> {
                digest.update(name.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
                digest.update(text.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
            });
            return HexFormat.of().formatHex(digest.digest()).substring(0, DIGITS);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException(missing);
        }
    }
}
