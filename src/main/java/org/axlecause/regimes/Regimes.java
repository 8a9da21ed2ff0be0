package org.axlecause.regimes;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.axlecause.shared.YamlFile;
import org.jspecify.annotations.Nullable;

/** All inspection regimes by their codes. */
public final class Regimes {

    private final SortedMap<String, Regime> byCode;

    private Regimes(SortedMap<String, Regime> byCode) {
        this.byCode = byCode;
    }

    /** The regimes that come with the release. */
    public static Regimes released() {
        return of(YamlFile.inRules("regimes"));
    }

    /** The regimes of the release and those that an operator keeps in a folder. */
    public static Regimes releasedAnd(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new IllegalStateException("The folder " + folder
                    + " named by axlecause.regimes-dir does not exist; create it or leave the setting out.");
        }
        List<YamlFile> files = new ArrayList<>(YamlFile.inRules("regimes"));
        files.addAll(YamlFile.inFolder(folder));
        return of(files);
    }

    /** The regimes of those files; two of one code are refused. */
    public static Regimes of(List<YamlFile> files) {
        SortedMap<String, Regime> byCode = new TreeMap<>();
        for (YamlFile file : files) {
            Regime regime = Regime.of(file);
            if (byCode.putIfAbsent(regime.code(), regime) != null) {
                throw file.root()
                        .member("regime")
                        .wrong(
                                "there is a regime '" + regime.code() + "' already",
                                "give this one a code and a file name of its own");
            }
        }
        return new Regimes(byCode);
    }

    /** The regime of that code, or null where there is none. */
    public @Nullable Regime find(String code) {
        return byCode.get(code);
    }

    /** Codes of all regimes, sorted. */
    public List<String> codes() {
        return List.copyOf(byCode.keySet());
    }

    /** All regimes, sorted by code. */
    public List<Regime> all() {
        return List.copyOf(byCode.values());
    }
}
