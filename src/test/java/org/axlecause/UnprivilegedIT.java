package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** The folder that the container file copies, run as the container runs it: by a number, with nothing to write to. */
class UnprivilegedIT {

    private static final int USER = 10001;
    private static final List<String> AS_USER = List.of(
            "setpriv",
            "--reuid=" + USER,
            "--regid=" + USER,
            "--clear-groups",
            "--no-new-privs",
            "--bounding-set=-all",
            "--inh-caps=-all");

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    @Test
    void a_user_without_rights_runs_it_and_writes_to_the_data_folder_alone() throws Exception {
        assumeTrue(DebianPostgres.isRoot(), "skipped: only root can become another user");
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/setpriv")), "skipped: setpriv (package util-linux) is missing");
        Path application = folder.resolve("application");
        assertThat(new ProcessBuilder("cp", "-r", PackagedService.APPLICATION.toString(), application.toString())
                        .inheritIO()
                        .start()
                        .waitFor())
                .isZero();
        Path data = Files.createDirectory(folder.resolve("data"));
        Files.setAttribute(data, "unix:uid", USER);
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));

        try (PackagedService service = new PackagedService(folder)
                .from(application)
                .launchedBy(AS_USER)
                .asShipped()
                .with("AXLECAUSE_DATA_DIR", data.toString())
                .start()) {
            service.putSite();
            assertThat(service.present("UNPRIVILEGED").body()).contains("\"accepted\"");
            assertThat(Files.getAttribute(
                            Path.of("/proc", String.valueOf(service.process().pid())), "unix:uid"))
                    .isEqualTo(USER);
            assertThat(data.resolve("postgresql")).exists();
        }
    }
}
