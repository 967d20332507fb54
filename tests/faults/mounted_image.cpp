#include "mounted_image.hpp"

#include <fcntl.h>
#include <linux/loop.h>
#include <sys/ioctl.h>
#include <sys/mount.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace seamtakt {

namespace {

class Descriptor {
 public:
  explicit Descriptor(const std::string& path) : number_(open(path.c_str(), O_RDWR | O_CLOEXEC)) {
    if (number_ < 0) throw std::system_error(errno, std::generic_category(), "can't open " + path);
  }
  ~Descriptor() { close(number_); }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int number() const { return number_; }

 private:
  int number_;
};

void mount_ext4(const std::string& device, const std::string& folder) {
  // Without auto_da_alloc ext4 doesn't make up for a missing fsync before a rename.
  if (mount(device.c_str(), folder.c_str(), "ext4", 0, "noauto_da_alloc") != 0)
    throw std::system_error(errno, std::generic_category(), "can't mount " + device);
}

}  // namespace

MountedImage::MountedImage(const std::string& image, const std::string& folder) : folder_(folder) {
  const Descriptor control("/dev/loop-control"), file(image);
  loop_config config{};
  config.fd = static_cast<__u32>(file.number());
  // The device releases the image with its last user, whatever happens to this process.
  config.info.lo_flags = LO_FLAGS_AUTOCLEAR;
  // Between the two calls another process may take the device.
  for (int attempt = 0; attempt < 100; ++attempt) {
    const int number = ioctl(control.number(), LOOP_CTL_GET_FREE);
    if (number < 0) break;
    const std::string name = "/dev/loop" + std::to_string(number);
    const Descriptor device(name);
    if (ioctl(device.number(), LOOP_CONFIGURE, &config) == 0) {
      mount_ext4(name, folder);
      return;
    }
    if (errno != EBUSY) break;
  }
  throw std::system_error(errno, std::generic_category(), "no free loop device");
}

MountedImage::~MountedImage() {
  if (umount2(folder_.c_str(), 0) != 0) umount2(folder_.c_str(), MNT_DETACH);
}

}  // namespace seamtakt
