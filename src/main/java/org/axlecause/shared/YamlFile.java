package org.axlecause.shared;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.Node;

/**
 * One YAML file with its source positions. Scalars keep the text that was written; the reader of a member decides what
 * it must be, so that {@code no} stays a word and {@code 0.30} keeps its decimals.
 */
public final class YamlFile {

    private static final String ENDING = ".yaml";
    private static final String RULES = "rules/";
    /** The description of the rules folder also marks where that folder lies on the class path. */
    private static final String MARKER = RULES + "README.md";

    private final String name;
    private final String text;
    private final YamlNode root;

    private YamlFile(String name, String text) {
        this.name = name;
        this.text = text;
        this.root = parse(name, text);
    }

    /** The file of that name on the class path, such as {@code rules/policies/baseline.yaml}. */
    public static YamlFile onClassPath(String name) {
        try (InputStream in = loader().getResourceAsStream(name)) {
            if (in == null) {
                throw new YamlException(name, 1, "there is no such file on the class path", "add it or mend the name");
            }
            return new YamlFile(name, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(name + " can't be read", e);
        }
    }

    /** The file at that path. */
    public static YamlFile at(Path path) {
        try {
            return new YamlFile(path.toString(), Files.readString(path));
        } catch (IOException e) {
            throw new UncheckedIOException(path + " can't be read", e);
        }
    }

    /** Text that a program holds, read as the file of that name. */
    public static YamlFile ofText(String name, String text) {
        return new YamlFile(name, text);
    }

    /** All YAML files of a folder of {@code rules/} on the class path, such as {@code regimes}, sorted by name. */
    public static List<YamlFile> inRules(String folder) {
        List<YamlFile> files = new ArrayList<>();
        textsInRules(folder, ENDING).forEach((name, text) -> files.add(new YamlFile(name, text)));
        return List.copyOf(files);
    }

    /**
     * The texts of all files below a folder of {@code rules/} on the class path, sorted by name; an empty folder name
     * means all of {@code rules/}.
     */
    public static SortedMap<String, String> textsInRules(String folder, String ending) {
        SortedMap<String, String> texts = new TreeMap<>();
        try {
            for (URL marker : Collections.list(loader().getResources(MARKER))) {
                readAll(marker, folder, ending, texts);
            }
        } catch (IOException | URISyntaxException e) {
            throw new IllegalStateException("the folder " + RULES + folder + " can't be listed", e);
        }
        return texts;
    }

    /** All YAML files directly in a folder of the disk, sorted by name. */
    public static List<YamlFile> inFolder(Path folder) {
        try (Stream<Path> paths = Files.list(folder)) {
            return paths.filter(path -> path.toString().endsWith(ENDING))
                    .sorted(Comparator.comparing(Path::toString))
                    .map(YamlFile::at)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("the folder " + folder + " can't be listed", e);
        }
    }

    /** Name as it stands in messages. */
    public String name() {
        return name;
    }

    /** Name without folder and ending. */
    public String stem() {
        String file = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
        return file.endsWith(ENDING) ? file.substring(0, file.length() - ENDING.length()) : file;
    }

    /** The text as it was read. */
    public String text() {
        return text;
    }

    /** The document's top node. */
    public YamlNode root() {
        return root;
    }

    private static void readAll(URL marker, String folder, String ending, SortedMap<String, String> texts)
            throws IOException, URISyntaxException {
        String address = marker.toString();
        if (address.startsWith("jar:")) {
            URI jar = new URI(address.substring("jar:".length(), address.indexOf("!/")));
            try (FileSystem files = FileSystems.newFileSystem(Path.of(jar))) {
                readAll(files.getPath(RULES), folder, ending, texts);
            }
        } else {
            Path description = Path.of(marker.toURI());
            readAll(description.resolveSibling(""), folder, ending, texts);
        }
    }

    private static void readAll(Path rules, String folder, String ending, SortedMap<String, String> texts)
            throws IOException {
        Path start = rules.resolve(folder);
        if (!Files.isDirectory(start)) {
            return;
        }
        List<Path> found = new ArrayList<>();
        try (Stream<Path> paths = Files.walk(start)) {
            paths.filter(path -> path.toString().endsWith(ending))
                    .filter(Files::isRegularFile)
                    .forEach(found::add);
        }
        for (Path path : found) {
            String relative = rules.relativize(path).toString().replace('\\', '/');
            texts.putIfAbsent(RULES + relative, Files.readString(path));
        }
    }

    private static YamlNode parse(String name, String text) {
        LoaderOptions options = new LoaderOptions();
        options.setMaxAliasesForCollections(0);
        Node node;
        try {
            node = new Yaml(options).compose(new StringReader(text));
        } catch (MarkedYAMLException e) {
            Mark mark = e.getProblemMark();
            throw new YamlException(
                    name,
                    mark == null ? 1 : mark.getLine() + 1,
                    "this is not YAML: " + e.getProblem(),
                    "mend the indent, quotes or brackets at or just before this line");
        } catch (YAMLException e) {
            throw new YamlException(name, 1, "this is not YAML: " + e.getMessage(), "save it as plain UTF-8 text");
        }
        if (node == null) {
            throw new YamlException(name, 1, "the file is empty", "write its members or remove it");
        }
        return YamlNode.of(name, "the file", node);
    }

    private static ClassLoader loader() {
        ClassLoader context = Thread.currentThread().getContextClassLoader();
        return context == null ? YamlFile.class.getClassLoader() : context;
    }
}
